package org.chordlog.correction;

import org.chordlog.stats.math.Normal;

/** Pieces beyond limits, normally distributed. */
final class Outside {
  private Outside() {}

  /** Share of pieces beyond the limits, with their mean and standard deviation in permil. */
  static double share(Aim aim, double mean, double deviation) {
    return Normal.below((aim.openLimit() - mean) / deviation)
        + Normal.below((mean - aim.tightLimit()) / deviation);
  }
}
