package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Collectors;
import org.chordlog.decode.FormatsTable.Result;
import org.junit.jupiter.api.Test;

/**
 * Formats of indicators: the right proposal is first or among those shown, and none is silently
 * wrong.
 */
final class FormatsTest {
  @Test
  void mostFormatsAreProposedRightOrOfferedAndNoneIsSilentlyWrong() {
    Map<String, Result> results =
        Formats.ALL.keySet().stream().collect(Collectors.toMap(name -> name, FormatsTable::result));
    List<String> wrong = named(results, Result.SILENTLY_WRONG);
    assertEquals(List.of(), wrong);
    int proposed = named(results, Result.RIGHT).size() + named(results, Result.OFFERED).size();
    assertTrue(proposed >= 0.9 * results.size(), results.toString());
  }

  private static List<String> named(Map<String, Result> results, Result result) {
    return results.keySet().stream().filter(name -> results.get(name) == result).sorted().toList();
  }

  @Test
  void nothingIsProposedFromAStandingValue() {
    long[] standing = new long[80];
    Arrays.fill(standing, 5_123);
    Formats.ALL.forEach(
        (name, format) -> {
          List<Arrival> stream = FormatsTable.stream(format, standing);
          assertEquals(List.of(), Proposals.of(stream, null), name);
        });
  }

  @Test
  void aPlungerThatOnlyFlickersIsAskedToBeMoved() {
    Random random = new Random(3);
    long[] flickering = random.longs(80, 5_121, 5_126).toArray();
    for (String name : List.of("lead_spaces", "two_in_line", "json_line", "counts_um")) {
      Proposals seen =
          Proposals.seen(
              FormatsTable.stream(Objects.requireNonNull(Formats.ALL.get(name)), flickering), null);
      assertEquals(List.of(), seen.best(), name);
      assertTrue(seen.standsStill() && seen.likeness() > 0.7, name);
    }
  }
}
