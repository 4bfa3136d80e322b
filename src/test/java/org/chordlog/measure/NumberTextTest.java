package org.chordlog.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class NumberTextTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1800     | 1800
          ' 12.5 ' | 12.5
          12,5     | 12.5
          ,5       | 0.5
          −1.5     | -1.5
          +3.      | 3
          1.8e3    | 1800
          """)
  void aNumberIsReadWithEitherSignForDecimalsAndMinus(String text, double value) {
    assertEquals(value, NumberText.read(text));
  }

  /** The last three are numbers to the language alone. */
  @ParameterizedTest
  @ValueSource(strings = {"", "wide", "1,800.5", "1 800", "1e999", "12d", "0x1p3", "NaN"})
  void otherTextIsNone(String text) {
    assertNull(NumberText.read(text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1,800    | true
          −12,125  | true
          1,800 mm | true
          1,80     | false
          0,125    | false
          1,8005   | false
          1800,125 | false
          1.800    | false
          """)
  void threeDigitsAfterACommaCouldBeThousands(String text, boolean could) {
    assertEquals(could, NumberText.couldBeThousands(text));
  }
}
