package org.chordlog.radius;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;

/**
 * The bridge as it is computed with: calibrated where there is a calibration, else nominal.
 * Variances and covariances in mm² over span (s), zero offset (z) and foot radius (r); a foot
 * radius that the calibration did not fit keeps the bridge's own uncertainty.
 */
record EffectiveBridge(
    double spanMm,
    double zeroOffsetMm,
    double footRadiusMm,
    double ss,
    double zz,
    double rr,
    double sz,
    double sr,
    double zr,
    double degreesOfFreedom,
    boolean calibrated) {
  static EffectiveBridge of(SetUp setUp) {
    @Nullable Calibration calibration = setUp.calibration();
    return calibration == null
        ? nominal(setUp.bridge())
        : calibrated(calibration, square(setUp.bridge().footRadiusUncertaintyMm()));
  }

  private static EffectiveBridge nominal(Bridge b) {
    double ss = square(b.spanUncertaintyMm());
    double rr = square(b.footRadiusUncertaintyMm());
    double infinite = Double.POSITIVE_INFINITY;
    return new EffectiveBridge(
        b.spanMm(), 0, b.footRadiusMm(), ss, 0, rr, 0, 0, 0, infinite, false);
  }

  private static EffectiveBridge calibrated(Calibration c, double footVariance) {
    double fitted = cell(c, 2, 2);
    return new EffectiveBridge(
        c.spanMm(),
        c.zeroOffsetMm(),
        c.footRadiusMm(),
        cell(c, 0, 0),
        cell(c, 1, 1),
        fitted > 0 ? fitted : footVariance,
        cell(c, 0, 1),
        cell(c, 0, 2),
        cell(c, 1, 2),
        c.degreesOfFreedom() > 0 ? c.degreesOfFreedom() : Double.POSITIVE_INFINITY,
        true);
  }

  /** Variance of a quantity with these sensitivities. */
  double variance(double bySpan, double byZero, double byFoot) {
    double own = bySpan * bySpan * ss + byZero * byZero * zz + byFoot * byFoot * rr;
    double shared = bySpan * byZero * sz + bySpan * byFoot * sr + byZero * byFoot * zr;
    return Math.max(0, own + 2 * shared);
  }

  private static double cell(Calibration c, int row, int column) {
    return c.covariance().get(row).get(column);
  }

  private static double square(double x) {
    return x * x;
  }
}
