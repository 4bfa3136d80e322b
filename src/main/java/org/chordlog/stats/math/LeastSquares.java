package org.chordlog.stats.math;

import org.apache.commons.math3.stat.regression.SimpleRegression;

/** A straight line by least squares. */
public final class LeastSquares {
  private LeastSquares() {}

  /** The line of least squares through as many y as x. */
  public static SimpleRegression of(double[] x, double[] y) {
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < x.length; i++) {
      line.addData(x[i], y[i]);
    }
    return line;
  }
}
