package org.chordlog.stats.math;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Moments of the range W of n standard normal values, by integration: by the trapezoidal rule where
 * the integrand falls off smoothly at both ends, over which it converges faster than any power of
 * its step.
 */
public final class RangeIntegrals {
  private static final double TAIL = 8.5;
  private static final double STEP = 0.1;
  private static final int STEPS = (int) Math.round(2 * TAIL / STEP);
  private static final int NODES = 16;
  private static final int PARTS = 5;

  private RangeIntegrals() {}

  /** E W = ∫ 1 − Φⁿ − (1 − Φ)ⁿ, Tippett (1925). */
  public static double mean(int n) {
    double mean = 0;
    for (int i = 0; i <= STEPS; i++) {
      double below = Normal.below(at(i));
      mean += STEP * (1 - Math.pow(below, n) - Math.pow(1 - below, n));
    }
    return mean;
  }

  /** Standard deviation of W. */
  public static double deviation(int n) {
    double mean = mean(n);
    return Math.sqrt(meanSquares(n)[n] - mean * mean);
  }

  /** E W² = 2∫ w(1 − P(W ≤ w)) for each n up to {@code most}. */
  static double[] meanSquares(int most) {
    double[] squares = new double[most + 1];
    double part = 2 * TAIL / PARTS;
    for (int i = 0; i < PARTS; i++) {
      add(squares, new GaussIntegratorFactory().legendre(NODES, i * part, (i + 1) * part));
    }
    return squares;
  }

  private static void add(double[] squares, GaussIntegrator nodes) {
    for (int i = 0; i < nodes.getNumberOfPoints(); i++) {
      double w = nodes.getPoint(i);
      double[] below = below(w, squares.length - 1);
      for (int n = 2; n < squares.length; n++) {
        squares[n] += nodes.getWeight(i) * 2 * w * (1 - below[n]);
      }
    }
  }

  /** P(W ≤ w) = n∫φ(x)(Φ(x + w) − Φ(x))ⁿ⁻¹ for each n. */
  private static double[] below(double w, int most) {
    double[] below = new double[most + 1];
    for (int i = 0; i <= STEPS; i++) {
      double inside = Normal.below(at(i) + w) - Normal.below(at(i));
      double term = STEP * Normal.density(at(i));
      for (int n = 2; n <= most; n++) {
        term *= inside;
        below[n] += n * term;
      }
    }
    return below;
  }

  private static double at(int step) {
    return -TAIL + step * STEP;
  }
}
