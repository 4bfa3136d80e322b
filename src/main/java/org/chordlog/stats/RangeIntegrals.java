package org.chordlog.stats;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/** Moments of the range W of n standard normal values, by integration. */
final class RangeIntegrals {
  private static final double TAIL = 8.5;
  private static final double STEP = 0.1;
  private static final int NODES = 100;

  private RangeIntegrals() {}

  /** E W = ∫ 1 − Φⁿ − (1 − Φ)ⁿ, Tippett (1925). */
  static double mean(int n) {
    return nodes(TAIL)
        .integrate(x -> 2 * (1 - Math.pow(Normal.below(x), n) - Math.pow(Normal.below(-x), n)));
  }

  /** E W² = 2∫ w(1 − P(W ≤ w)) for each n up to {@code most}. */
  static double[] meanSquares(int most) {
    GaussIntegrator nodes = nodes(2 * TAIL);
    double[] squares = new double[most + 1];
    for (int i = 0; i < nodes.getNumberOfPoints(); i++) {
      double w = nodes.getPoint(i);
      double[] below = below(w, most);
      for (int n = 2; n <= most; n++) {
        squares[n] += nodes.getWeight(i) * 2 * w * (1 - below[n]);
      }
    }
    return squares;
  }

  /** P(W ≤ w) = n∫φ(x)(Φ(x + w) − Φ(x))ⁿ⁻¹ for each n, by the trapezoidal rule. */
  private static double[] below(double w, int most) {
    double[] below = new double[most + 1];
    for (double x = -TAIL; x <= TAIL; x += STEP) {
      double inside = Normal.below(x + w) - Normal.below(x);
      double term = STEP * Normal.density(x);
      for (int n = 2; n <= most; n++) {
        term *= inside;
        below[n] += n * term;
      }
    }
    return below;
  }

  private static GaussIntegrator nodes(double to) {
    return new GaussIntegratorFactory().legendre(NODES, 0, to);
  }
}
