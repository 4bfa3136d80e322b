package org.chordlog.correction.closing;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * A ring whose curvature varies along it: δκ = m + c₁ cos(2πs/S) + s₁ sin(2πs/S) + …, 1/mm, against
 * the ring that closes. To first order only these three open it: a ripple of the rollers does not.
 */
record UnevenRing(double targetMm, double mean, double cosine, double sine) {
  UnevenRing {
    Check.positive("targetMm", targetMm);
    Check.finite("mean", mean);
    Check.finite("cosine", cosine);
    Check.finite("sine", sine);
  }

  /**
   * From readings evenly spaced round the ring, the first one half a space from its start. Two give
   * the mean alone, three or more all.
   */
  static UnevenRing of(double targetMm, List<Double> radiiMm) {
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
    return count == 2
        ? new UnevenRing(target, mean, 0, 0)
        : new UnevenRing(target, mean, cosine, sine);
  }

  private double developedMm() {
    return 2 * Math.PI * targetMm;
  }

  /** What the ring lacks of a full turn, −S m. */
  double kinkDegrees() {
    return Math.toDegrees(-developedMm() * mean);
  }

  /** End against start along the start's direction, R₀S(m − c₁/2). */
  double alongMm() {
    return targetMm * developedMm() * (mean - cosine / 2);
  }

  /** End against start across it, towards the inside, −R₀S s₁/2. */
  double acrossMm() {
    return -targetMm * developedMm() * sine / 2;
  }
}
