package org.chordlog.profile;

import org.chordlog.stats.math.RangeIntegrals;
import org.jspecify.annotations.Nullable;

/**
 * How even a piece is along its evaluated length, in percent of its mean curvature: range of the
 * windows, and how much of it noise alone would make; end less start by the line of least squares;
 * the first and the last span less the rest, null where there is none. Standard uncertainties come
 * from the scatter along the piece; what all places share cancels.
 */
public record Uniformity(
    double rangePercent,
    double rangeOfNoisePercent,
    double trendPercent,
    double trendUncertaintyPercent,
    @Nullable Double startPercent,
    @Nullable Double endPercent,
    @Nullable Double endsUncertaintyPercent) {
  static Uniformity of(Windows windows, double meanPerMm, double spanMm) {
    double percent = 100 / meanPerMm;
    int n = windows.size();
    double scatter = percent * windows.scatterPerMm();
    int ends = Math.max(1, (int) Math.round(spanMm / windows.lengthMm()));
    boolean rest = n >= 3 * ends;
    return new Uniformity(
        percent * range(windows),
        RangeIntegrals.mean(unmarked(windows)) * scatter,
        percent * trend(windows),
        scatter * Math.sqrt(12.0 / n),
        rest ? percent * (mean(windows, 0, ends) - mean(windows, ends, n)) : null,
        rest ? percent * (mean(windows, n - ends, n) - mean(windows, 0, n - ends)) : null,
        rest ? scatter * Math.sqrt(1.0 / ends + 1.0 / (n - ends)) : null);
  }

  private static int unmarked(Windows windows) {
    int n = 0;
    for (boolean marked : windows.marked) {
      n += marked ? 0 : 1;
    }
    return Math.max(1, n);
  }

  private static double range(Windows windows) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < windows.size(); i++) {
      if (!windows.marked[i]) {
        least = Math.min(least, windows.bendPerMm[i]);
        most = Math.max(most, windows.bendPerMm[i]);
      }
    }
    return Math.max(0, most - least);
  }

  /** Slope of the line of least squares times the length of all windows. */
  private static double trend(Windows windows) {
    int n = windows.size();
    double middle = 0;
    for (double place : windows.placeMm) {
      middle += place / n;
    }
    double products = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double way = windows.placeMm[i] - middle;
      products += way * windows.bendPerMm[i];
      squares += way * way;
    }
    return squares == 0 ? 0 : products / squares * windows.lengthMm() * n;
  }

  private static double mean(Windows windows, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += windows.bendPerMm[i];
    }
    return sum / (to - from);
  }
}
