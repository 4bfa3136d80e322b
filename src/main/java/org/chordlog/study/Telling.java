package org.chordlog.study;

import org.chordlog.measure.Check;

/**
 * How figures in the study's unit are told: times {@code perUnit}, in {@code unit}. A study in
 * curvature is told in mm of radius at a nominal: dR = −R0²·dκ.
 */
public record Telling(double perUnit, String unit) {
  /** As the readings are. */
  public static final Telling AS_READ = new Telling(1, "");

  /** Told as read, in that unit. */
  public static Telling as(String unit) {
    return new Telling(1, unit);
  }

  /** Curvature in 1/mm, told in mm at that radius. */
  public static Telling atNominal(double radiusMm) {
    Check.positive("nominal radius", radiusMm);
    return new Telling(-radiusMm * radiusMm, "mm");
  }

  /** The same of values in that unit of length in place of mm. */
  public Telling in(String lengthUnit) {
    return new Telling(perUnit, lengthUnit);
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
