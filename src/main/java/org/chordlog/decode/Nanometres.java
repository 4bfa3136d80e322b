package org.chordlog.decode;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.IntStream;
import org.chordlog.measure.LengthUnit;

/** Digits and decimals to whole nanometres, exactly, halves to even; most are one product. */
final class Nanometres {
  /** Counts of a measuring wheel go up to 2^32, each taken for a millimetre. */
  static final long MOST = 5_000_000_000_000_000L;

  static final long REFUSED = Long.MIN_VALUE;
  private final BigDecimal scale;
  private final Map<LengthUnit, long[]> factors = new EnumMap<>(LengthUnit.class);

  Nanometres(BigDecimal scale) {
    this.scale = scale;
    for (LengthUnit unit : LengthUnit.values()) {
      factors.put(
          unit,
          IntStream.rangeClosed(0, NumberForm.MOST_DIGITS)
              .mapToLong(d -> factor(unit, d))
              .toArray());
    }
  }

  /** The value, or {@link #REFUSED} beyond {@link #MOST}. */
  long of(long digits, int decimals, LengthUnit unit) {
    long[] ofUnit = factors.get(unit);
    long factor = ofUnit == null ? 0 : ofUnit[decimals];
    if (factor == 0) {
      return of(BigDecimal.valueOf(digits, decimals), unit);
    }
    return digits > MOST / factor ? REFUSED : digits * factor;
  }

  /** The same for a number that is not made of few digits. */
  long of(BigDecimal value, LengthUnit unit) {
    BigDecimal nm = exact(value, unit).setScale(0, RoundingMode.HALF_EVEN);
    return nm.abs().compareTo(BigDecimal.valueOf(MOST)) > 0 ? REFUSED : nm.longValueExact();
  }

  private BigDecimal exact(BigDecimal value, LengthUnit unit) {
    return value.multiply(scale).multiply(BigDecimal.valueOf(unit.nanometres()));
  }

  /** Nanometres of one in the last decimal, or 0 where that is not a whole number. */
  private long factor(LengthUnit unit, int decimals) {
    BigDecimal one = exact(BigDecimal.valueOf(1, decimals), unit).stripTrailingZeros();
    return one.scale() > 0 || one.compareTo(BigDecimal.valueOf(MOST)) > 0 ? 0 : one.longValue();
  }
}
