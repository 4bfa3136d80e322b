package org.chordlog.stats.math;

import java.util.Arrays;

/**
 * Mann-Kendall test for a monotonic trend (Mann 1945, Kendall 1975), variance corrected for ties;
 * {@code pValue} two-sided: exact for up to {@value #EXACT} values without ties, else by the normal
 * approximation with continuity correction.
 */
public record MannKendall(long s, double variance, double z, double pValue) {
  static final int EXACT = 10;

  /** The test of values in their order. */
  public static MannKendall of(double[] y) {
    long s = 0;
    for (int i = 0; i < y.length; i++) {
      for (int j = i + 1; j < y.length; j++) {
        s += (long) Math.signum(y[j] - y[i]);
      }
    }
    MannKendall normal = of(s, variance(y));
    boolean exact = y.length <= EXACT && normal.variance == term(y.length) / 18;
    return exact ? new MannKendall(s, normal.variance, normal.z, twoSided(s, y.length)) : normal;
  }

  /** By the normal approximation; 0 variance refuses nothing. */
  public static MannKendall of(long s, double variance) {
    double z = variance > 0 ? (s - Long.signum(s)) / Math.sqrt(variance) : 0;
    return new MannKendall(s, variance, z, 2 * Normal.below(-Math.abs(z)));
  }

  private static double twoSided(long s, int n) {
    return s == 0 ? 1 : Math.min(1, 2 * upperTail(Math.abs(s), n));
  }

  /** P(S ≥ s) of n values without ties, by counting inversions (Kendall 1975). */
  public static double upperTail(long s, int n) {
    double[] chance = {1};
    for (int values = 2; values <= n; values++) {
      chance = oneMore(chance, values);
    }
    int pairs = n * (n - 1) / 2;
    double tail = 0;
    for (int inversions = 0; 2L * inversions <= pairs - s; inversions++) {
      tail += chance[inversions];
    }
    return tail;
  }

  /** The newest of so many values makes 0 to values − 1 inversions, each as likely. */
  private static double[] oneMore(double[] chance, int values) {
    double[] next = new double[chance.length + values - 1];
    for (int i = 0; i < chance.length; i++) {
      for (int more = 0; more < values; more++) {
        next[i + more] += chance[i] / values;
      }
    }
    return next;
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
