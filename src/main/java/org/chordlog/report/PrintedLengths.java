package org.chordlog.report;

import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Length;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Section;
import org.chordlog.measure.Sentence;
import org.chordlog.stats.capability.Figure;
import org.chordlog.verdict.SectionWords;
import org.jspecify.annotations.Nullable;

/** Lengths, given in mm, as printed in the reader's unit. */
record PrintedLengths(ViewUnit unit) {
  private static final String MM = "mm";
  private static final String PER_KM = "1/km";
  private static final double KM_PER_THOUSAND_INCHES = 0.0254;

  /** A column's heading with the unit of its values. */
  String heading(String quantity) {
    return quantity + ", " + unit.symbol();
  }

  /** A length that someone has set: as short as it is, without unit. */
  String bare(double mm) {
    return unit == ViewUnit.MM ? Print.plain(mm) : lengths().stated(mm);
  }

  /** The same with its unit. */
  String plain(double mm) {
    return withUnit(bare(mm));
  }

  /** A length that someone has asked for: as it was given. */
  String asked(@Nullable Double mm) {
    return mm == null ? Print.NONE : plain(mm);
  }

  /** With that many decimals in mm, and as fine in inches. */
  String fixed(@Nullable Double mm, int decimalsInMm) {
    return Print.number(unit.orNull(mm), lengths().decimalsAs(decimalsInMm));
  }

  /** The same with its plus or minus. */
  String signed(double mm, int decimalsInMm) {
    return (mm < 0 ? "" : "+") + fixed(mm, decimalsInMm);
  }

  /** To the tenth of a micrometre. */
  String depth(long nm) {
    return fixed(Length.mm(nm), 4);
  }

  String radius(RadiusEstimate radius) {
    Double mm = radius.radiusMm();
    return mm == null ? "flat, above " + fixedBy(radius.lowerMm(), 0) : fixedBy(mm, places(radius));
  }

  /** The coverage interval. */
  String interval(RadiusEstimate radius) {
    Double upper = radius.upperMm();
    int places = places(radius);
    return fixedBy(radius.lowerMm(), places)
        + " to "
        + (upper == null ? "flat" : fixedBy(upper, places));
  }

  private int places(RadiusEstimate radius) {
    return Lengths.decimals(unit.of(Lengths.expandedMm(radius)));
  }

  private String fixedBy(double mm, int decimals) {
    return Print.number(unit.of(mm), decimals);
  }

  /** A length that was computed, without unit. */
  String figure(double mm) {
    return Print.figure(unit.of(mm));
  }

  /** A value of a figure of the statistics, a length among them, without unit. */
  String figure(Figure figure, @Nullable Double value) {
    if (value == null || unit == ViewUnit.MM || !figure.unit().equals(MM)) {
      return Print.figure(figure, value);
    }
    return fixed(value, figure.decimals());
  }

  /** A value that is given in that unit: a length or a curvature in the reader's. */
  double value(double value, String given) {
    if (unit == ViewUnit.MM) {
      return value;
    }
    return switch (given) {
      case MM -> unit.of(value);
      case PER_KM -> value * KM_PER_THOUSAND_INCHES;
      default -> value;
    };
  }

  @Nullable Double valueOrNull(@Nullable Double value, String given) {
    return value == null ? null : (Double) value(value, given);
  }

  /** A square of a curvature that is given in 1/mm². */
  double squaredCurvature(double perSquareMm) {
    return perSquareMm / (unit.of(1) * unit.of(1));
  }

  String unitOfSquaredCurvature() {
    return "1/" + unit.symbol() + "²";
  }

  /** The unit in which {@link #value} gives what is given in that one. */
  String shown(String given) {
    if (unit == ViewUnit.MM) {
      return given;
    }
    return switch (given) {
      case MM -> unit.symbol();
      case PER_KM -> "per 1,000 in";
      default -> given;
    };
  }

  String said(Sentence sentence) {
    return sentence.in(lengths());
  }

  /** "Round tube 60.3 × 3.2 mm". */
  String of(Section section) {
    return said(SectionWords.of(section));
  }

  private Lengths lengths() {
    return unit.lengths();
  }

  String withUnit(String number) {
    return number + " " + unit.symbol();
  }
}
