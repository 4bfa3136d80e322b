package org.chordlog.profile;

import java.util.Arrays;

/** The value below which a share of others lies, interpolated between neighbours in order. */
final class Percentile {
  private Percentile() {}

  static double of(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double at = share * (sorted.length - 1);
    int below = (int) at;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
  }
}
