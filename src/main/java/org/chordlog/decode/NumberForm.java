package org.chordlog.decode;

import java.math.BigDecimal;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * How a number is written. The grammar is exact: blanks, sign, blanks, digits, mark, digits,
 * exponent; at most 15 digits; nothing else is a number.
 *
 * @param mark what stands before the decimals; {@link Mark#NONE}: whole counts
 * @param sign where the sign stands
 * @param integerDigits how many digits stand before the mark; null: any number
 * @param decimals how many stand after it; null: any, but steady (see {@link ShapeGuard})
 * @param scale what one count is worth in the unit, as 0.001 for counts of a thousandth; null: 1
 * @param base decimal or hexadecimal digits
 * @param exponent whether a power of ten follows, as {@code E+00}; with {@code decimalsVary} only
 *     where the number needs one
 * @param decimalsVary whether trailing zeros may be left out, so that decimals come and go
 * @param zeroOmitted whether numbers below one are written without their leading zero, as .950
 */
public record NumberForm(
    Mark mark,
    Sign sign,
    @Nullable Integer integerDigits,
    @Nullable Integer decimals,
    BigDecimal scale,
    Base base,
    boolean exponent,
    boolean decimalsVary,
    boolean zeroOmitted) {
  public static final int MOST_DIGITS = 15;
  public static final NumberForm DECIMAL = new NumberForm(Mark.POINT, Sign.OPTIONAL, null, null);

  /** Decimal marks. */
  public enum Mark {
    POINT,
    COMMA,
    NONE
  }

  /**
   * Where the sign stands: always or only at need before the number, after it, or nowhere; or in
   * the highest bit of a hexadecimal number of fixed length.
   */
  public enum Sign {
    ALWAYS,
    OPTIONAL,
    AFTER,
    NEVER,
    TWOS_COMPLEMENT
  }

  /** What digits are used. */
  public enum Base {
    DECIMAL,
    HEXADECIMAL
  }

  /** Null (not given) takes the default. */
  public NumberForm {
    mark = mark == null ? Mark.POINT : mark;
    sign = sign == null ? Sign.OPTIONAL : sign;
    scale = scale == null ? BigDecimal.ONE : plain(scale);
    base = base == null ? Base.DECIMAL : base;
    Check.within("integerDigits", integerDigits == null ? 1 : integerDigits, 0, MOST_DIGITS);
    Check.within("decimals", decimals == null ? 0 : decimals, 0, MOST_DIGITS);
    if (scale.signum() <= 0 || scale.precision() > MOST_DIGITS || Math.abs(scale.scale()) > 15) {
      throw new BadInput("scale", scale, "is not a scale", "above 0, at most 15 digits");
    }
    if (mark == Mark.NONE && decimals != null && decimals != 0) {
      throw new BadInput("decimals", decimals, "need a decimal mark", "0, or mark POINT or COMMA");
    }
    if (decimals != null && decimalsVary) {
      throw new BadInput("decimalsVary", true, "is against fixed decimals", "one of the two");
    }
    checkHexadecimal(mark, sign, integerDigits, base, exponent);
  }

  /** 0.00005 and 0.000050 are the same scale. */
  private static BigDecimal plain(BigDecimal number) {
    BigDecimal plain = number.stripTrailingZeros();
    return plain.scale() < 0 && plain.scale() > -MOST_DIGITS ? plain.setScale(0) : plain;
  }

  private static void checkHexadecimal(
      Mark mark, Sign sign, @Nullable Integer integerDigits, Base base, boolean exponent) {
    if (base == Base.HEXADECIMAL && (mark != Mark.NONE || exponent)) {
      throw new BadInput("mark", mark, "is for decimal numbers", "NONE, without exponent");
    }
    if (sign == Sign.TWOS_COMPLEMENT
        && (base != Base.HEXADECIMAL || integerDigits == null || integerDigits < 1)) {
      throw new BadInput(
          "sign", sign, "needs hexadecimal digits of a fixed count", "with base, integerDigits");
    }
  }

  public NumberForm(
      Mark mark, Sign sign, @Nullable Integer integerDigits, @Nullable Integer decimals) {
    this(mark, sign, integerDigits, decimals, BigDecimal.ONE);
  }

  public NumberForm(
      Mark mark,
      Sign sign,
      @Nullable Integer integerDigits,
      @Nullable Integer decimals,
      BigDecimal scale) {
    this(mark, sign, integerDigits, decimals, scale, Base.DECIMAL, false, false, false);
  }

  /** The same without a sign, which stands elsewhere in the frame. */
  NumberForm unsigned() {
    return withSign(Sign.NEVER);
  }

  private NumberForm withSign(Sign other) {
    return new NumberForm(
        mark, other, integerDigits, decimals, scale, base, exponent, decimalsVary, zeroOmitted);
  }

  /** The same where one count is worth that much of the unit. */
  NumberForm withScale(BigDecimal worth) {
    return new NumberForm(
        mark, sign, integerDigits, decimals, worth, base, exponent, decimalsVary, zeroOmitted);
  }

  /** The same where a power of ten follows. */
  public NumberForm withExponent() {
    return new NumberForm(
        mark, sign, integerDigits, decimals, scale, base, true, decimalsVary, zeroOmitted);
  }

  /** The same where decimals come and go. */
  public NumberForm withVaryingDecimals() {
    return new NumberForm(
        mark, sign, integerDigits, null, scale, base, exponent, true, zeroOmitted);
  }

  /** The same where numbers below one have no leading zero. */
  public NumberForm withZeroOmitted() {
    return new NumberForm(mark, sign, null, decimals, scale, base, exponent, decimalsVary, true);
  }

  /** Whole counts, each worth {@code scale} of the unit. */
  public static NumberForm counts(Sign sign, @Nullable Integer digits, String scale) {
    return new NumberForm(Mark.NONE, sign, digits, 0, new BigDecimal(scale));
  }

  /** Hexadecimal counts of that many digits, negative ones as two's complement. */
  public static NumberForm hexadecimal(int digits, String scale) {
    return new NumberForm(
        Mark.NONE,
        Sign.TWOS_COMPLEMENT,
        digits,
        0,
        new BigDecimal(scale),
        Base.HEXADECIMAL,
        false,
        false,
        false);
  }
}
