package org.chordlog.stats.math;

import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Level up to a place, straight line from there on, by least squares (Hudson 1966, Journal of the
 * American Statistical Association 61, 1097-1129): {@code at} is the index where the line begins.
 */
record Hinge(int at, double residual) {
  /** Residual variances that a bend later than the start must take away (Akaike). */
  private static final double WORTH = 2;

  private static final int LEAST_ON_LINE = 3;

  /** The best hinge through as many y as x. */
  static Hinge of(double[] x, double[] y) {
    Hinge line = at(0, x, y);
    Hinge best = line;
    for (int k = 1; k + LEAST_ON_LINE <= x.length; k++) {
      Hinge next = at(k, x, y);
      best = next.residual < best.residual ? next : best;
    }
    double variance = best.residual / Math.max(1, x.length - 3);
    return line.residual - best.residual > WORTH * variance ? best : line;
  }

  private static Hinge at(int k, double[] x, double[] y) {
    SimpleRegression fit = new SimpleRegression();
    for (int i = 0; i < x.length; i++) {
      fit.addData(Math.max(0, x[i] - x[k]), y[i]);
    }
    return new Hinge(k, fit.getSumSquaredErrors());
  }
}
