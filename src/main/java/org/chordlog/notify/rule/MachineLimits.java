package org.chordlog.notify.rule;

import org.chordlog.measure.Check;

/** What is asked of a machine's pieces: the target radius, ± the tolerance, mm. */
public record MachineLimits(double targetMm, double toleranceMm) {
  public MachineLimits {
    Check.positive("target", targetMm);
    Check.positive("tolerance", toleranceMm);
  }

  /** From limit to limit, in parts of the target. */
  double relativeWidth() {
    return 2 * relative();
  }

  /** To either side, in parts of the target: what a verdict forecasts. */
  public double relative() {
    return toleranceMm / targetMm;
  }
}
