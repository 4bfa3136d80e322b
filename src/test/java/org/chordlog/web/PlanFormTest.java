package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.SubgroupRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class PlanFormTest {
  private static PlanForm of(List<String> positions) {
    return new PlanForm(positions, SubgroupRule.Kind.INDIVIDUAL, 1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"whole piece", "Whole Piece", " whole piece "})
  void theNameOfAllPositionsTogetherIsNoPosition(String name) {
    BadInput e = assertThrows(BadInput.class, () -> of(List.of("start", name)).plan());
    assertTrue(
        Objects.requireNonNull(e.getMessage()).contains("is the name of all positions together"),
        e.getMessage());
  }

  @Test
  void asManyPositionsAsASubgroupMayHaveReadings() {
    List<String> most = IntStream.rangeClosed(1, 25).mapToObj(i -> "p" + i).toList();
    assertEquals(most, of(most).plan().positions());
    List<String> more = IntStream.rangeClosed(1, 26).mapToObj(i -> "p" + i).toList();
    BadInput e = assertThrows(BadInput.class, () -> of(more).plan());
    assertTrue(
        Objects.requireNonNull(e.getMessage()).contains("are too many; allowed: up to 25"),
        e.getMessage());
  }
}
