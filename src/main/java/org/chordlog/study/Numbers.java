package org.chordlog.study;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers in sentences. */
final class Numbers {
  private Numbers() {}

  /** With up to four significant digits, never with an exponent. */
  static String plain(double value) {
    if (!Double.isFinite(value)) {
      return String.valueOf(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(4));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** A probability, without false digits near 0. */
  static String probability(double p) {
    return p < 0.0005 ? "below 0.001" : String.format(java.util.Locale.ROOT, "%.3f", p);
  }
}
