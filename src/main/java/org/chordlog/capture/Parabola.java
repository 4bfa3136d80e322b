package org.chordlog.capture;

import java.util.Arrays;

/**
 * A parabola of least squares {@code a + b·p + c·p²}, p counted from the middle of its places, so
 * that its extreme is a turning point; with the standard deviation of the values about it.
 */
record Parabola(double a, double b, double c, double halfWidth, int count, double scatter) {
  private static final int MOST_ROUNDS = 4;

  /** Limit in standard deviations beyond which a value is stray: 4 keeps 99.99 % of normal ones. */
  private static final double STRAY = 4;

  /** Median of |x| of a standard normal x. */
  private static final double NORMAL_MEDIAN = 0.6745;

  /**
   * Over at least three values at rising places, leaving stray ones out: what is farther from the
   * parabola than {@value #STRAY} robust standard deviations, which are at least {@code least}.
   */
  static Parabola robust(double[] places, double[] values, double least) {
    double[] p = places;
    double[] v = values;
    Parabola fit = over(p, v);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      boolean[] keep = fit.kept(p, v, least);
      int count = count(keep);
      if (count == v.length || count < 3 || 2 * count < values.length) {
        break;
      }
      p = only(p, keep);
      v = only(v, keep);
      fit = over(p, v);
    }
    return fit;
  }

  private boolean[] kept(double[] p, double[] v, double least) {
    double middle = (p[0] + p[p.length - 1]) / 2;
    double[] off = new double[v.length];
    for (int i = 0; i < v.length; i++) {
      off[i] = Math.abs(v[i] - at(p[i] - middle));
    }
    double limit = STRAY * Math.max(least, median(off) / NORMAL_MEDIAN);
    boolean[] keep = new boolean[v.length];
    for (int i = 0; i < v.length; i++) {
      keep[i] = off[i] <= limit;
    }
    return keep;
  }

  private static int count(boolean[] keep) {
    int count = 0;
    for (boolean each : keep) {
      count += each ? 1 : 0;
    }
    return count;
  }

  private static double[] only(double[] all, boolean[] keep) {
    double[] kept = new double[count(keep)];
    int n = 0;
    for (int i = 0; i < all.length; i++) {
      if (keep[i]) {
        kept[n++] = all[i];
      }
    }
    return kept;
  }

  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
  }

  /** By the normal equations; places are few and near each other. */
  static Parabola over(double[] places, double[] values) {
    int n = values.length;
    double middle = (places[0] + places[n - 1]) / 2;
    double[] power = new double[5];
    double[] moment = new double[3];
    for (int i = 0; i < n; i++) {
      double p = places[i] - middle;
      for (int k = 0; k < 5; k++) {
        power[k] += Math.pow(p, k);
      }
      for (int k = 0; k < 3; k++) {
        moment[k] += Math.pow(p, k) * (values[i] - values[0]);
      }
    }
    double[] solved = solve(power, moment);
    Parabola fit =
        new Parabola(
            solved[0] + values[0], solved[1], solved[2], (places[n - 1] - places[0]) / 2, n, 0);
    return fit.withScatter(places, values, middle);
  }

  /** Cramer's rule on the three normal equations. */
  private static double[] solve(double[] s, double[] m) {
    double[][] rows = {{s[0], s[1], s[2]}, {s[1], s[2], s[3]}, {s[2], s[3], s[4]}};
    double all = determinant(rows);
    double[] solved = new double[3];
    for (int column = 0; column < 3; column++) {
      double[][] replaced = {rows[0].clone(), rows[1].clone(), rows[2].clone()};
      for (int row = 0; row < 3; row++) {
        replaced[row][column] = m[row];
      }
      solved[column] = determinant(replaced) / all;
    }
    return solved;
  }

  private static double determinant(double[][] r) {
    return r[0][0] * (r[1][1] * r[2][2] - r[1][2] * r[2][1])
        - r[0][1] * (r[1][0] * r[2][2] - r[1][2] * r[2][0])
        + r[0][2] * (r[1][0] * r[2][1] - r[1][1] * r[2][0]);
  }

  private Parabola withScatter(double[] places, double[] values, double middle) {
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      double off = values[i] - at(places[i] - middle);
      squares += off * off;
    }
    double freedom = Math.max(1, count - 3);
    return new Parabola(a, b, c, halfWidth, count, Math.sqrt(squares / freedom));
  }

  private double at(double p) {
    return a + b * p + c * p * p;
  }

  /** Whether it has its highest point among the values. */
  boolean peaks() {
    return c < 0 && Math.abs(b) <= -2 * c * halfWidth;
  }

  double peak() {
    return a - b * b / (4 * c);
  }

  /** How much it rises or falls over the values. */
  double range() {
    return 2 * Math.abs(b) * halfWidth + Math.abs(c) * halfWidth * halfWidth;
  }
}
