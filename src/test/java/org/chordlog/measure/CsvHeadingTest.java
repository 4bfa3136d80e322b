package org.chordlog.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows are parted by |, cells by semicolons. */
final class CsvHeadingTest {
  private static boolean isIn(String text) {
    List<List<String>> rows =
        Arrays.stream(text.split("\\|", -1)).map(row -> List.of(row.split(";", -1))).toList();
    return CsvHeading.isIn(rows);
  }

  @ParameterizedTest
  @CsvSource({
    "piece;radius|1;5|2;6, true",
    "piece;;radius|1;;5, true",
    "piece;radius|A;5|piece;radius|B;6, true",
    "radius (mm)|5, true",
    "5|6, false",
    "1;left;5|2;right;6, false",
    "A;5|B;6, false",
    "n/a;5|6;7|8;9, false"
  })
  void namesAndNumbersAreToldApart(String rows, boolean headed) {
    assertEquals(headed, isIn(rows));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "n/a|5|6",
        "1800.5 mm|1801|1802",
        "2026-05-04|1801|1802",
        "5.4.2026;left|6.4.2026;right",
        "P1;left;n/a|P2;left;5",
        "A;left;none|B;left;5"
      })
  void aFirstReadingIsNotTakenForAHeading(String rows) {
    String said = said(rows);
    assertTrue(said.startsWith("first line: "), said);
    assertTrue(said.contains("looks like data"), said);
  }

  /** 1 would be the first reading of that column. */
  @ParameterizedTest
  @ValueSource(strings = {"piece;1;2|1;5;6|2;7;8", "piece;2026|1;5|2;6"})
  void aHeadingWithNumbersIsNotTakenForReadings(String rows) {
    String said = said(rows);
    assertTrue(said.startsWith("first line: piece names a column"), said);
  }

  private static String said(String rows) {
    return String.valueOf(assertThrows(BadInput.class, () -> isIn(rows)).getMessage());
  }
}
