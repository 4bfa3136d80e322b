package org.chordlog.radius;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Length;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/** What the specification of a radius is worth in depth, and how well a depth must be known. */
public final class DepthTolerance {
  /**
   * A measurement is good enough where its expanded uncertainty (twice the standard one) is a tenth
   * of the tolerance (common practice, no source): a standard error of a twentieth.
   */
  private static final double SHARE = 1 / 20.0;

  private DepthTolerance() {}

  /** Standard error of a mean depth, nm, that such a tolerance permits; 0 without a tolerance. */
  public static long meanMayErrNm(RadiusModel model, Specification specification) {
    return Length.nm(SHARE * widthMm(model, specification));
  }

  /**
   * Depth between the two limits, mm; twice that between the target and the only limit within the
   * bridge's reach; 0 without a limit.
   */
  static double widthMm(RadiusModel model, Specification specification) {
    @Nullable Double lower = depthMm(model, specification.lowerLimitMm());
    @Nullable Double upper = depthMm(model, specification.upperLimitMm());
    @Nullable Double target = depthMm(model, specification.targetMm());
    if (lower != null && upper != null) {
      return Math.abs(lower - upper);
    }
    @Nullable Double only = lower == null ? upper : lower;
    return only == null || target == null ? 0 : 2 * Math.abs(only - target);
  }

  /** Null for no limit, and where no bend that the bridge can stand on has that radius. */
  private static @Nullable Double depthMm(RadiusModel model, @Nullable Double radiusMm) {
    try {
      return radiusMm == null ? null : Double.valueOf(model.depthForMm(radiusMm));
    } catch (BadInput e) {
      return null;
    }
  }
}
