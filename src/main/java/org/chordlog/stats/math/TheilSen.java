package org.chordlog.stats.math;

import java.util.Arrays;

/** Median of all pairwise slopes with its confidence interval (Theil 1950; Sen 1968). */
public record TheilSen(double slope, double lower, double upper, double intercept) {
  /** At least two different x; pairs with equal x are left out. */
  public static TheilSen of(double[] x, double[] y, double confidence) {
    return of(slopes(x, y), MannKendall.of(y).variance(), confidence, x, y);
  }

  /**
   * From slopes, whose order is changed, and the variance of their Mann-Kendall sum, through x and
   * y.
   */
  public static TheilSen of(
      double[] slopes, double variance, double confidence, double[] x, double[] y) {
    double slope = Ranks.median(slopes);
    double spread = Normal.quantile((1 + confidence) / 2) * Math.sqrt(variance);
    int rank = (int) Math.max(1, Math.floor((slopes.length - spread) / 2));
    double[] rest = new double[x.length];
    Arrays.setAll(rest, i -> y[i] - slope * x[i]);
    return new TheilSen(
        slope,
        Ranks.select(slopes, rank - 1),
        Ranks.select(slopes, slopes.length - rank),
        Ranks.median(rest));
  }

  /** Per that many times the step. */
  public TheilSen per(double steps) {
    return new TheilSen(steps * slope, steps * lower, steps * upper, intercept);
  }

  /** The line at {@code x}. */
  public double at(double x) {
    return intercept + slope * x;
  }

  /** All pairwise slopes. */
  public static double[] slopes(double[] x, double[] y) {
    double[] slopes = new double[x.length * (x.length - 1) / 2];
    int count = 0;
    for (int i = 0; i < x.length; i++) {
      for (int j = i + 1; j < x.length; j++) {
        if (x[i] != x[j]) {
          slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
        }
      }
    }
    return count == slopes.length ? slopes : Arrays.copyOf(slopes, count);
  }
}
