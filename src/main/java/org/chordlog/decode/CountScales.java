package org.chordlog.decode;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.LengthUnit;

/** What one count of an indicator may be worth, likelier ones first: common practice, no source. */
record CountScales(BigDecimal scale, LengthUnit unit, double trust) {
  private static final List<CountScales> USUAL =
      List.of(
          of("0.001", LengthUnit.MM, 0.6),
          of("0.01", LengthUnit.MM, 0.35),
          of("0.0005", LengthUnit.MM, 0.32),
          of("0.0001", LengthUnit.MM, 0.3),
          of("0.0001", LengthUnit.INCH, 0.25),
          of("0.00005", LengthUnit.INCH, 0.22));

  private static CountScales of(String scale, LengthUnit unit, double trust) {
    return new CountScales(new BigDecimal(scale), unit, trust);
  }

  static List<CountScales> usual() {
    return USUAL;
  }

  /** Whole counts, negative ones with a minus. */
  NumberForm counts() {
    return NumberForm.counts(NumberForm.Sign.OPTIONAL, null, scale.toPlainString());
  }

  String assumption() {
    return "one count is " + scale.toPlainString() + " " + unit.name().toLowerCase(Locale.ROOT);
  }
}
