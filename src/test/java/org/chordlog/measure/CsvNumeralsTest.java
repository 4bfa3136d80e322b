package org.chordlog.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** As spreadsheets write 1800 that they show as 1,800 or 1.800, by the language of the computer. */
final class CsvNumeralsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ,   | 1.800    | 7
          ;   | 1,800    | 7
          ;   | 1.800    | 12.5
          ;   | 0.125    | 1.800
          TAB | 1,800    | 12,5
          TAB | 1.800    | 12.5 mm
          TAB | 1800.5   | 12,5
          ' ' | 12,125   | 12,130
          ' ' | 12.125   | 12.130
          ,   | 1,800    | 12,5
          ;   | 1800     | 1.801,5
          ;   | two      | 1.801,5
          """)
  void aDecimalMarkIsTakenAsSuch(String separator, String cell, String other) {
    assertEquals(cell, read(separator, cell, other));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ,   | 1,800    | 7       | could be a decimal comma or thousands
          ,   | 1,800    | 12.5    | could be a decimal comma or thousands
          ;   | 1.800    | 7       | could be a decimal point or thousands
          ;   | 1.800    | 1799,5  | could be a decimal point or thousands
          ;   | 1.800    | 1.799,5 | could be a decimal point or thousands
          ;   | 1,800 mm | 12.5    | could be a decimal comma or thousands
          TAB | 1,800    | 7       | could be a decimal comma or thousands
          TAB | −1.800   | 7       | could be a decimal point or thousands
          ;   | 1.800,5  | 7       | has its thousands divided
          ,   | 1,800.5  | 7       | has its thousands divided
          ;   | 1 800,5  | 7       | has its thousands divided
          ;   | 1'800.5  | 7       | has its thousands divided
          ;   | 1.234.567| 7       | has its thousands divided
          """)
  void whatHasThousandsOrCouldHaveIsRefused(
      String separator, String cell, String other, String problem) {
    BadInput refusal = assertThrows(BadInput.class, () -> read(separator, cell, other));
    assertTrue(
        String.valueOf(refusal.getMessage()).startsWith("row 2: " + cell + " " + problem), problem);
  }

  private static String read(String separator, String cell, String other) {
    char divides = separator.equals("TAB") ? '\t' : separator.charAt(0);
    return new CsvNumerals(divides, List.of(cell, other)).checked("row 2", cell);
  }
}
