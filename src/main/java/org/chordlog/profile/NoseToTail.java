package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;

/**
 * Tells pieces that follow each other without free air between them: where the depth stays below
 * half its level over more than the span, two straight ends meet, and the cut is in their middle.
 * It is as good as the two ends are equally long.
 */
final class NoseToTail {
  private final double[] placeMm;
  private final double[] depth;
  private final double spanMm;
  private final double leastLevel;

  /**
   * Places in their order with depths that are positive in the sense of the bend; a level below the
   * least is no bend.
   */
  NoseToTail(double[] placeMm, double[] depth, double spanMm, double leastLevel) {
    this.placeMm = placeMm;
    this.depth = depth;
    this.spanMm = spanMm;
    this.leastLevel = leastLevel;
  }

  /** Where to cut, mm; what begins or ends low is a piece's own straight end. */
  List<Double> cuts() {
    List<Double> cuts = new ArrayList<>();
    double half = depth.length == 0 ? 0 : Percentile.of(depth, 0.8) / 2;
    for (int i = 0; 2 * half > leastLevel && i < depth.length; i++) {
      int behind = i;
      while (behind < depth.length && depth[behind] < half) {
        behind++;
      }
      boolean inside = i > 0 && behind < depth.length && behind > i;
      if (inside && placeMm[behind - 1] - placeMm[i] > spanMm) {
        cuts.add((placeMm[i] + placeMm[behind - 1]) / 2);
      }
      i = Math.max(i, behind);
    }
    return cuts;
  }
}
