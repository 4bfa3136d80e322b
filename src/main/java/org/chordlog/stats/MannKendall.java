package org.chordlog.stats;

import java.util.Arrays;

/**
 * Mann-Kendall test for a monotonic trend (Mann 1945, Kendall 1975), variance corrected for ties;
 * {@code pValue} two-sided by the normal approximation with continuity correction.
 */
public record MannKendall(long s, double variance, double z, double pValue) {
  public static MannKendall of(double[] y) {
    long s = 0;
    for (int i = 0; i < y.length; i++) {
      for (int j = i + 1; j < y.length; j++) {
        s += (long) Math.signum(y[j] - y[i]);
      }
    }
    double variance = variance(y);
    double z = variance > 0 ? (s - Long.signum(s)) / Math.sqrt(variance) : 0;
    return new MannKendall(s, variance, z, 2 * Normal.below(-Math.abs(z)));
  }

  private static double variance(double[] y) {
    double[] sorted = y.clone();
    Arrays.sort(sorted);
    double sum = term(y.length);
    int start = 0;
    for (int i = 1; i <= sorted.length; i++) {
      if (i == sorted.length || sorted[i] != sorted[start]) {
        sum -= term(i - start);
        start = i;
      }
    }
    return sum / 18;
  }

  private static double term(int n) {
    return (double) n * (n - 1) * (2.0 * n + 5);
  }
}
