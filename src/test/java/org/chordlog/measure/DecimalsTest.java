package org.chordlog.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class DecimalsTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "12, 12",
    "-12, −12",
    "0.0039, 0.00390",
    "-0.359, −0.359",
    "19.97, 20.0",
    "14795.3, 14795",
    "0.0000379, 0.0000379",
    "0.1, 0.100"
  })
  void threeSignificantDigitsOrMore(double value, String written) {
    assertEquals(written, Decimals.significant(value));
  }

  /** A mean of 1797.33 mm ± 0.13 mm is not 1797 mm from 1797 mm to 1797 mm. */
  /** Typed as 25.7, worked out as 25.700000001: one number on the scale. */
  @Test
  void aSettingIsAsShortAsItIs() {
    assertEquals("25.7", Decimals.setting(25.7));
    assertEquals("25.7", Decimals.setting(25.600000001 + 0.1));
    assertEquals("25", Decimals.setting(25));
    assertEquals("\u22120.125", Decimals.setting(-0.125));
    assertEquals("0", Decimals.setting(-1e-9));
  }

  @Test
  void asManyAsTellTheEndsOfAnIntervalApart() {
    assertEquals("1797.33", Decimals.significant(1797.3289, 1797.2, 1797.46));
    assertEquals("1797.20", Decimals.significant(1797.2001, 1797.2, 1797.46));
    assertEquals("1797", Decimals.significant(1797.3289, null, 1797.46));
    assertEquals("12.7", Decimals.significant(12.66, 4.45, 56.8));
  }

  @Test
  void theMinusIsATrueOneAndZeroHasNone() {
    assertEquals("−0.10", Decimals.fixed(-0.1, 2));
    assertEquals("0.0", Decimals.fixed(-0.04, 1));
    assertEquals("+0.04", Decimals.signed(0.04, 2));
    assertEquals("−1.5", Decimals.plain(new BigDecimal("-1.500")));
  }
}
