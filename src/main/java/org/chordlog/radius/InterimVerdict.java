package org.chordlog.radius;

import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.Master;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;

/**
 * A station against a master: deviation in mm (positive reads too large), and whether it passes.
 * Radius and deviation are null where the master read flat.
 */
public record InterimVerdict(
    @Nullable Double radiusMm, @Nullable Double deviationMm, double limitMm, boolean passed) {
  /**
   * The radius measured on the master's own face against the master's; within the limit passes. A
   * master that reads flat fails.
   */
  public static InterimVerdict of(RadiusEstimate estimate, Master master, double limitMm) {
    Check.positive("limitMm", limitMm);
    Double radius = estimate.radiusMm();
    if (radius == null) {
      return new InterimVerdict(null, null, limitMm, false);
    }
    double deviation = radius - master.radiusMm();
    return new InterimVerdict(radius, deviation, limitMm, Math.abs(deviation) <= limitMm);
  }

  /** The set-up to read a master with: its face is both measured and specified. */
  public static SetUp on(Master master, SetUp setUp) {
    Face face = master.face();
    return new SetUp(
        setUp.bridge(),
        setUp.indicator(),
        setUp.zero(),
        setUp.calibration(),
        setUp.section(),
        face,
        face);
  }
}
