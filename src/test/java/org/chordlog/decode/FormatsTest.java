package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.chordlog.decode.FormatsTable.Result;
import org.junit.jupiter.api.Test;

/** Formats of indicators: proposed right or asked about, never silently wrong. */
final class FormatsTest {
  @Test
  void mostFormatsAreRightOrAskedAboutAndNoneIsSilentlyWrong() {
    Map<String, Result> results =
        FormatsTable.FORMATS.keySet().stream()
            .collect(Collectors.toMap(name -> name, FormatsTable::result));
    List<String> wrong = named(results, Result.SILENTLY_WRONG);
    assertEquals(List.of(), wrong);
    List<String> none = named(results, Result.NONE);
    assertTrue(none.size() <= 0.1 * results.size(), none.toString());
  }

  private static List<String> named(Map<String, Result> results, Result result) {
    return results.keySet().stream().filter(name -> results.get(name) == result).sorted().toList();
  }

  @Test
  void nothingIsProposedFromAStandingValue() {
    long[] standing = new long[80];
    Arrays.fill(standing, 5_123);
    FormatsTable.FORMATS.forEach(
        (name, format) -> {
          List<Arrival> stream = FormatsTable.stream(format, standing);
          assertEquals(List.of(), Proposals.of(stream, null), name);
        });
    assertTrue(
        Proposals.standsStill(
            FormatsTable.stream(
                Objects.requireNonNull(FormatsTable.FORMATS.get("lead_spaces")), standing)));
  }
}
