package org.chordlog.correction.closing;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * A ring whose curvature varies along it: δκ = m + c₁ cos(2πs/S) + s₁ sin(2πs/S) + …, 1/mm, against
 * the ring that closes. To first order only these three open it: a ripple of the rollers does not.
 */
public record UnevenRing(double targetMm, double mean, double cosine, double sine) {
  /** Readings that tell where the end lies across the start; fewer give the mean alone. */
  public static final int LEAST_FOR_ACROSS = 3;

  /** Standard uncertainties of kink and ends. */
  public record Uncertainty(double kinkDegrees, double alongMm, double acrossMm) {}

  public UnevenRing {
    Check.positive("targetMm", targetMm);
    Check.finite("mean", mean);
    Check.finite("cosine", cosine);
    Check.finite("sine", sine);
  }

  /**
   * From readings evenly spaced round the ring, the first one half a space from its start. Two give
   * the mean alone, three or more all; {@link BadInput} for fewer.
   */
  public static UnevenRing of(double targetMm, List<Double> radiiMm) {
    int count = radiiMm.size();
    if (count < 2) {
      throw new BadInput("radii", count, "are too few", "2 or more, evenly spaced");
    }
    double target = Check.positive("targetMm", targetMm);
    double mean = 0;
    double cosine = 0;
    double sine = 0;
    for (int i = 0; i < count; i++) {
      double off = 1 / Check.positive("radii", radiiMm.get(i)) - 1 / target;
      double turned = 2 * Math.PI * (i + 0.5) / count;
      mean += off / count;
      cosine += 2 * off * Math.cos(turned) / count;
      sine += 2 * off * Math.sin(turned) / count;
    }
    return count < LEAST_FOR_ACROSS
        ? new UnevenRing(target, mean, 0, 0)
        : new UnevenRing(target, mean, cosine, sine);
  }

  /** The radius of an even ring with the same mean curvature. */
  public double meanRadiusMm() {
    return 1 / (1 / targetMm + mean);
  }

  /**
   * By the law of propagation (JCGM 100, 5.1.2): of so many radii, each with a standard uncertainty
   * of its own and one that all have in common, which changes the mean alone.
   */
  public Uncertainty uncertainty(int readings, double eachMm, double commonMm) {
    double each = Check.notNegative("uncertaintyMm", eachMm) / targetMm / targetMm;
    double common = Check.notNegative("commonUncertaintyMm", commonMm) / targetMm / targetMm;
    double ofMean = Math.hypot(each / Math.sqrt(readings), common);
    double ofHarmonic = readings < LEAST_FOR_ACROSS ? 0 : each * Math.sqrt(2.0 / readings);
    double lever = targetMm * developedMm();
    return new Uncertainty(
        Math.toDegrees(developedMm() * ofMean),
        lever * Math.hypot(ofMean, ofHarmonic / 2),
        lever * ofHarmonic / 2);
  }

  private double developedMm() {
    return 2 * Math.PI * targetMm;
  }

  /** What the ring lacks of a full turn, −S m. */
  public double kinkDegrees() {
    return Math.toDegrees(-developedMm() * mean);
  }

  /** End against start along the start's direction, R₀S(m − c₁/2). */
  public double alongMm() {
    return targetMm * developedMm() * (mean - cosine / 2);
  }

  /** End against start across it, towards the inside, −R₀S s₁/2. */
  public double acrossMm() {
    return -targetMm * developedMm() * sine / 2;
  }
}
