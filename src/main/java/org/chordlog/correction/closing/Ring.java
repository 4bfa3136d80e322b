package org.chordlog.correction.closing;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/**
 * A ring of the developed length 2π × {@code targetMm}, bent to another radius. Gaps are positive
 * where the ring is open, negative where its ends overlap.
 */
public record Ring(double targetMm) {
  /** By less than the turn, 4.4934 / π, from which on a smaller radius brings the ends nearer. */
  private static final double MOST_OVERLAP = 1.43;

  public Ring {
    Check.positive("targetMm", targetMm);
  }

  /** A ring that closes at the radius of that developed length. */
  public static Ring ofDeveloped(double developedMm) {
    return new Ring(Check.positive("developedMm", developedMm) / (2 * Math.PI));
  }

  /** Along the arc: 2π(R − R₀), exactly. */
  public double arcGapMm(double radiusMm) {
    return 2 * Math.PI * (Check.positive("radiusMm", radiusMm) - targetMm);
  }

  /** Straight from end to end: 2R sin(πR₀/R). */
  public double straightGapMm(double radiusMm) {
    double radius = Check.positive("radiusMm", radiusMm);
    return 2 * radius * Math.sin(Math.PI * targetMm / radius);
  }

  /** Angle between the ends' directions, 2π(1 − R₀/R). */
  public double kinkDegrees(double radiusMm) {
    return 360 * (1 - targetMm / Check.positive("radiusMm", radiusMm));
  }

  /**
   * Radius, mm, of which a gap along the arc remains; {@link BadInput} for a gap that no radius
   * near leaves.
   */
  public double radiusFromArcGapMm(double gapMm) {
    double radius = targetMm + Check.finite("gapMm", gapMm) / (2 * Math.PI);
    return Check.positive("radiusMm", radius);
  }

  /**
   * Solved numerically, between ends that overlap by 0.43 of a turn and half a circle left open,
   * where the straight gap grows with the radius.
   */
  public double radiusFromStraightGapMm(double gapMm) {
    double low = targetMm / MOST_OVERLAP;
    double high = 2 * targetMm;
    double least = straightGapMm(low);
    double most = straightGapMm(high);
    if (!(Check.finite("gapMm", gapMm) >= least && gapMm <= most)) {
      throw new BadInput("gapMm", gapMm, "is not a gap of this ring", within(least, most));
    }
    return Root.between(low, high, radius -> straightGapMm(radius) - gapMm);
  }

  /** Of the arc gap for one of the radius, both the same: 2π. */
  public static double gapUncertaintyMm(double radiusUncertaintyMm) {
    return 2 * Math.PI * Check.notNegative("radiusUncertaintyMm", radiusUncertaintyMm);
  }

  private static Sentence within(double leastMm, double mostMm) {
    return Sentence.of("%s to %s", Quantity.stated(leastMm), Quantity.stated(mostMm));
  }
}
