package org.chordlog.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Numbers as people read them: with a true minus, and a power of ten only where asked. */
public final class Decimals {
  private static final int MOST_DECIMALS = 12;
  private static final int SIGNIFICANT = 3;
  private static final double LEAST_P = 0.001;

  /** 1800.1 less 1800 is a little under 0.1, and has the places of 0.1. */
  private static final double SUBTRACTED = 1 + 1e-9;

  private Decimals() {}

  /** A written number with a true minus where it has a hyphen. */
  public static String withMinus(String number) {
    return number.replace('-', '\u2212');
  }

  /** A number as it may be copied from what is printed here, for who reads it. */
  public static String withHyphen(String number) {
    return number.replace('\u2212', '-');
  }

  /** With that many decimals, -1 for tens; what rounds to 0 has no sign. */
  public static String fixed(double value, int decimals) {
    if (decimals < 0) {
      double whole = Math.pow(10, -decimals);
      return fixed(whole * Math.rint(value / whole), 0);
    }
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    boolean zero = text.startsWith("-") && Double.parseDouble(text) == 0;
    return zero ? text.substring(1) : withMinus(text);
  }

  /** The same with its plus. */
  public static String signed(double value, int decimals) {
    return (value > 0 ? "+" : "") + fixed(value, decimals);
  }

  /** As short as it is, without trailing zeros. */
  public static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : withMinus(value.stripTrailingZeros().toPlainString());
  }

  /**
   * A number on a scale, such as that of the rollers: as short as it is, to a millionth. It is told
   * so wherever it is told, whoever set or worked it out.
   */
  public static String setting(double value) {
    return plain(BigDecimal.valueOf(value).setScale(6, RoundingMode.HALF_EVEN));
  }

  /** With three significant digits or more; a whole number as it is. */
  public static String significant(double value) {
    return significant(value, 0);
  }

  /**
   * The same for a value, or an end of its interval, that is told apart from the others: with the
   * two significant digits of half the interval at least. The pages have both in {@code
   * parts/study-result.js}.
   */
  public static String significant(double value, @Nullable Double lower, @Nullable Double upper) {
    if (lower == null || upper == null || lower.equals(upper)) {
      return significant(value, 0);
    }
    return significant(value, decimals(Math.abs(upper - lower) / 2, 2));
  }

  /** A p-value; below 0.001 its digits say nothing. */
  public static String probability(double p) {
    return p < LEAST_P ? "< " + LEAST_P : significant(p);
  }

  /** For squares of curvatures, which are far below 1. */
  public static String powerOfTen(double value) {
    return withMinus(String.format(Locale.ROOT, "%.3e", value));
  }

  private static String significant(double value, int least) {
    if (!Double.isFinite(value)) {
      return String.valueOf(value);
    }
    return value == Math.rint(value)
        ? plain(new BigDecimal(value))
        : fixed(value, Math.max(least, decimals(value, SIGNIFICANT)));
  }

  private static int decimals(double value, int digits) {
    double places = digits - 1 - Math.floor(Math.log10(Math.abs(value) * SUBTRACTED));
    return (int) Math.max(0, Math.min(MOST_DECIMALS, places));
  }
}
