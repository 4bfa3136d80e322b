package org.chordlog.stats.math;

import org.apache.commons.statistics.distribution.TDistribution;

/** A mean with its confidence interval by Student's t; NaN limits below two values. */
public final class MeanInterval {
  private MeanInterval() {}

  /** The mean with its interval; NaN ends below two values. */
  public static Interval of(Moments values) {
    double half = half(values, 1 - Interval.CONFIDENCE);
    return new Interval(values.mean(), values.mean() - half, values.mean() + half);
  }

  /** Half the interval that leaves out {@code error} on both sides together. */
  public static double half(Moments values, double error) {
    return values.n() < 2
        ? Double.NaN
        : TDistribution.of(values.n() - 1.0).inverseCumulativeProbability(1 - error / 2)
            * values.deviation()
            / Math.sqrt((double) values.n());
  }
}
