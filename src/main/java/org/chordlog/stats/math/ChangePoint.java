package org.chordlog.stats.math;

import java.util.Arrays;
import org.apache.commons.math3.stat.ranking.NaturalRanking;

/**
 * Pettitt's test for one shift of level (Pettitt 1979, Applied Statistics 28, 126-135): {@code at}
 * is the index of the first value after it; {@code pValue} by his approximation.
 */
public record ChangePoint(int at, double pValue) {
  /** At least two values. */
  public static ChangePoint of(double[] y) {
    double[] ranks = new NaturalRanking().rank(y);
    double n = y.length;
    double sum = 0;
    double farthest = -1;
    int at = 1;
    for (int i = 0; i < y.length - 1; i++) {
      sum += ranks[i];
      double u = Math.abs(2 * sum - (i + 1) * (n + 1));
      if (u > farthest) {
        farthest = u;
        at = i + 1;
      }
    }
    double p = 2 * Math.exp(-6 * farthest * farthest / (n * n * n + n * n));
    return new ChangePoint(at, Math.min(1, p));
  }

  /** Level after less level before. */
  public double step(double[] y) {
    return about(Arrays.copyOfRange(y, at, y.length)).mean()
        - about(Arrays.copyOfRange(y, 0, at)).mean();
  }

  private static Moments about(double[] values) {
    Moments moments = new Moments();
    Arrays.stream(values).forEach(moments::add);
    return moments;
  }
}
