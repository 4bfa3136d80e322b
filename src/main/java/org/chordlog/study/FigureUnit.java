package org.chordlog.study;

import org.chordlog.measure.Check;

/**
 * How figures in the study's unit are told: times {@code perUnit}, in {@code unit}. A study in
 * curvature is told in mm of radius at a nominal: dR = −R0²·dκ.
 */
public record FigureUnit(double perUnit, String unit) {
  /** As the readings are. */
  public static final FigureUnit AS_READ = new FigureUnit(1, "");

  /** Told as read, in that unit. */
  public static FigureUnit as(String unit) {
    return new FigureUnit(1, unit);
  }

  /** Curvature in 1/mm, told in mm at that radius. */
  public static FigureUnit atNominal(double radiusMm) {
    Check.positive("nominal radius", radiusMm);
    return new FigureUnit(-radiusMm * radiusMm, "mm");
  }

  /** The same of values in that unit of length in place of mm. */
  public FigureUnit in(String lengthUnit) {
    return new FigureUnit(perUnit, lengthUnit);
  }

  double deviation(double sigma) {
    return Math.abs(perUnit) * sigma;
  }

  /** A value itself: a curvature as its radius. */
  double value(double value) {
    return perUnit < 0 ? 1 / value : value;
  }

  double difference(double difference) {
    return perUnit * difference;
  }
}
