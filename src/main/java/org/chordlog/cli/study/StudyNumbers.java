package org.chordlog.cli.study;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import org.chordlog.measure.Decimals;

/** Numbers in tables of studies. */
final class StudyNumbers {
  private static final MathContext DIGITS = new MathContext(5);

  private StudyNumbers() {}

  /** Five significant digits with a true minus, and an exponent only for the very small. */
  static String plain(double value) {
    if (value == 0 || !Double.isFinite(value)) {
      return value == 0 ? "0" : String.valueOf(value);
    }
    if (Math.abs(value) < 1e-6) {
      return Decimals.withMinus(String.format(Locale.ROOT, "%.3g", value));
    }
    return Decimals.plain(new BigDecimal(value).round(DIGITS));
  }
}
