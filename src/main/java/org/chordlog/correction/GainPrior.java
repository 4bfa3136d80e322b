package org.chordlog.correction;

import org.chordlog.measure.Check;

/**
 * What is known of a machine's gain before any correction was recorded: change of curvature, 1/mm,
 * for one unit of the scale, negative where a higher number on the scale opens the radius.
 */
public record GainPrior(double perMmPerUnit, double standardUncertainty) {
  /**
   * A unit of 40 mm at rollers 600 mm apart would have 9e-4 1/mm: wide for any scale in use, not
   * even its sign known.
   */
  private static final double UNKNOWN = 1e-3;

  /** How much more real rollers move the curvature than the chord of the outer rollers says. */
  private static final double ABOVE_CHORD = 1.25;

  private static final double ABOVE_CHORD_UNCERTAINTY = 0.4;

  public GainPrior {
    Check.finite("perMmPerUnit", perMmPerUnit);
    Check.positive("standardUncertainty", standardUncertainty);
  }

  /** Neither unit nor sign of the scale is known: both are learned from recorded corrections. */
  public static GainPrior unknown() {
    return new GainPrior(0, UNKNOWN);
  }

  /**
   * From what people know: the radius changes by that many mm for one unit of the scale at that
   * radius (negative where a higher number is tighter). dκ = −dR/R².
   */
  public static GainPrior ofRadiusChange(double mmPerUnit, double atRadiusMm, double relative) {
    Check.finite("mmPerUnit", mmPerUnit);
    double radius = Check.positive("atRadiusMm", atRadiusMm);
    double gain = -mmPerUnit / (radius * radius);
    return new GainPrior(gain, Check.positive("relative", relative) * Math.abs(gain));
  }

  /**
   * Pyramid rollers whose outer ones are 2 {@code halfDistanceMm} apart, with a scale that moves
   * the middle one by {@code mmPerUnit}: dκ/dU = 2/a² of the chord, times 1.25 ± 40 %. Bending with
   * the triangular moment of three rollers gives factors from 0.45 (hardly yielded) to 1.9 (deep)
   * for a rectangle, by plastic beam theory.
   */
  public static GainPrior ofPyramidRollers(double halfDistanceMm, double mmPerUnit) {
    double half = Check.positive("halfDistanceMm", halfDistanceMm);
    double gain = ABOVE_CHORD * 2 / (half * half) * Check.finite("mmPerUnit", mmPerUnit);
    return new GainPrior(gain, ABOVE_CHORD_UNCERTAINTY * Math.abs(gain));
  }
}
