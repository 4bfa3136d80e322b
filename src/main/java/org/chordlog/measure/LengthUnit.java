package org.chordlog.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Units an indicator may send; one inch is exactly 25.4 mm. */
public enum LengthUnit {
  MM(1_000_000),
  UM(1_000),
  INCH(25_400_000);

  private final long nanometres;

  LengthUnit(long nanometres) {
    this.nanometres = nanometres;
  }

  /** How many nanometres one is, exactly. */
  public long nanometres() {
    return nanometres;
  }

  /** Nearest whole nanometre; throws {@link ArithmeticException} beyond a long. */
  public long toNm(BigDecimal value) {
    return value
        .multiply(BigDecimal.valueOf(nanometres))
        .setScale(0, RoundingMode.HALF_EVEN)
        .longValueExact();
  }
}
