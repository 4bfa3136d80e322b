package org.chordlog.study;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

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
    return p < 0.0005 ? "below 0.001" : String.format(Locale.ROOT, "%.3f", p);
  }

  /** Value and interval with unit, as {@code 27.9 % [18, 82]}. */
  static String told(StudyFigure figure) {
    String unit = figure.unit().isEmpty() ? "" : " " + figure.unit();
    return end(figure.value())
        + unit
        + " ["
        + end(figure.lower())
        + ", "
        + end(figure.upper())
        + "]";
  }

  private static String end(@Nullable Double value) {
    return value == null ? "open" : plain(value);
  }
}
