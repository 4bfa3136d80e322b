package org.chordlog.stats.drift;

import java.util.Arrays;
import java.util.List;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.MannKendall;
import org.chordlog.stats.math.TheilSen;

/**
 * The trend within stretches, whatever the steps between them: the Mann-Kendall sums and their
 * variances add up, and the slope is the median of all slopes within (Hirsch, Slack and Smith 1982,
 * Water Resources Research 18, 107-121, with stretches for seasons). So what is put right at the
 * rollers does not hide that they creep on. Stretches shorter than two blocks say nothing.
 */
record PooledTrend(double pValue, TheilSen line) {
  static final double ERROR = 0.002;

  /** At least one stretch of two blocks; the line passes through the last of them. */
  static PooledTrend of(List<Stretch> stretches) {
    List<Stretch> telling = stretches.stream().filter(each -> each.size() > 1).toList();
    MannKendall test = test(telling);
    Stretch last = telling.get(telling.size() - 1);
    return new PooledTrend(
        test.pValue(),
        TheilSen.of(slopes(telling), test.variance(), Interval.CONFIDENCE, last.x(), last.y()));
  }

  /** Sums of all stretches, by the normal approximation. */
  static MannKendall test(List<Stretch> stretches) {
    long s = stretches.stream().mapToLong(each -> each.trend().s()).sum();
    double variance = stretches.stream().mapToDouble(each -> each.trend().variance()).sum();
    return MannKendall.of(s, variance);
  }

  private static double[] slopes(List<Stretch> stretches) {
    return stretches.stream()
        .flatMapToDouble(each -> Arrays.stream(TheilSen.slopes(each.x(), each.y())))
        .toArray();
  }

  static boolean possible(List<Stretch> stretches) {
    return stretches.stream().anyMatch(each -> each.size() > 1);
  }
}
