package org.chordlog.study;

import java.util.Locale;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Numbers in sentences. */
final class Numbers {
  private static final String LENGTH = "mm";

  private Numbers() {}

  /** A probability, without false digits near 0. */
  static String probability(double p) {
    return p < 0.0005 ? "below 0.001" : String.format(Locale.ROOT, "%.3f", p);
  }

  /** Value with unit and interval, as {@code 27.9 % (interval 18 to 82)}. */
  static Sentence told(StudyFigure figure) {
    String unit = figure.unit();
    return Sentence.of(
        "%s (interval %s to %s)",
        told(figure.value(), unit), end(figure.lower(), unit), end(figure.upper(), unit));
  }

  /** A value with its unit; a length as one. */
  static Object told(@Nullable Double value, String unit) {
    Object number = end(value, unit);
    if (number instanceof Quantity length) {
      return threeDigits(length.mm());
    }
    return unit.isEmpty() ? number : number + " " + unit;
  }

  private static Object end(@Nullable Double value, String unit) {
    if (value == null) {
      return "open";
    }
    return unit.equals(LENGTH) ? threeDigits(value).withoutUnit() : Decimals.significant(value);
  }

  private static Quantity threeDigits(double mm) {
    return Quantity.of(mm, Math.abs(mm) / 10);
  }
}
