package org.chordlog.correction;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** The standard normal distribution. */
final class Gauss {
  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  private Gauss() {}

  static double below(double z) {
    return STANDARD.cumulativeProbability(z);
  }

  static double quantile(double probability) {
    return STANDARD.inverseCumulativeProbability(probability);
  }

  /** Share of pieces beyond the limits, with their mean and standard deviation in permil. */
  static double shareOut(Aim aim, double mean, double deviation) {
    return below((aim.openLimit() - mean) / deviation)
        + below((mean - aim.tightLimit()) / deviation);
  }
}
