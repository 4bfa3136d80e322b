package org.chordlog.decode;

import java.math.BigDecimal;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * How a number is written. The grammar is exact: blanks, sign, blanks, digits, mark, digits; at
 * most 15 digits; nothing else is a number.
 *
 * @param mark what stands before the decimals; {@link Mark#NONE}: whole counts
 * @param sign where the sign stands
 * @param integerDigits how many digits stand before the mark; null: any number
 * @param decimals how many stand after it; null: any, but steady (see {@link ShapeGuard})
 * @param scale what one count is worth in the unit, as 0.001 for counts of a thousandth; null: 1
 */
public record NumberForm(
    Mark mark,
    Sign sign,
    @Nullable Integer integerDigits,
    @Nullable Integer decimals,
    BigDecimal scale) {
  public static final int MOST_DIGITS = 15;
  public static final NumberForm DECIMAL = new NumberForm(Mark.POINT, Sign.OPTIONAL, null, null);

  /** Decimal marks. */
  public enum Mark {
    POINT,
    COMMA,
    NONE
  }

  /** Where the sign stands: always or only at need before the number, after it, or nowhere. */
  public enum Sign {
    ALWAYS,
    OPTIONAL,
    AFTER,
    NEVER
  }

  /** Null (not given) takes the default. */
  public NumberForm {
    mark = mark == null ? Mark.POINT : mark;
    sign = sign == null ? Sign.OPTIONAL : sign;
    scale = scale == null ? BigDecimal.ONE : scale;
    Check.within("integerDigits", integerDigits == null ? 1 : integerDigits, 0, MOST_DIGITS);
    Check.within("decimals", decimals == null ? 0 : decimals, 0, MOST_DIGITS);
    if (scale.signum() <= 0 || scale.precision() > MOST_DIGITS || Math.abs(scale.scale()) > 15) {
      throw new BadInput("scale", scale, "is no scale", "above 0, at most 15 digits");
    }
    if (mark == Mark.NONE && decimals != null && decimals != 0) {
      throw new BadInput("decimals", decimals, "need a decimal mark", "0, or mark POINT or COMMA");
    }
  }

  public NumberForm(
      Mark mark, Sign sign, @Nullable Integer integerDigits, @Nullable Integer decimals) {
    this(mark, sign, integerDigits, decimals, BigDecimal.ONE);
  }

  /** The same without a sign, which stands elsewhere in the frame. */
  NumberForm unsigned() {
    return new NumberForm(mark, Sign.NEVER, integerDigits, decimals, scale);
  }

  /** Whole counts, each worth {@code scale} of the unit. */
  public static NumberForm counts(Sign sign, @Nullable Integer digits, String scale) {
    return new NumberForm(Mark.NONE, sign, digits, 0, new BigDecimal(scale));
  }
}
