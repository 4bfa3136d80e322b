package org.chordlog.cli.study;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers in tables of studies. */
final class StudyNumbers {
  private static final MathContext DIGITS = new MathContext(5);

  private StudyNumbers() {}

  /** Five significant digits, with an exponent only for the very small. */
  static String plain(double value) {
    if (value == 0 || !Double.isFinite(value)) {
      return value == 0 ? "0" : String.valueOf(value);
    }
    if (Math.abs(value) < 1e-6) {
      return String.format(Locale.ROOT, "%.3g", value);
    }
    return new BigDecimal(value).round(DIGITS).stripTrailingZeros().toPlainString();
  }
}
