package org.chordlog.stats;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;

/** The noncentral t distribution, by integration over the standard deviation's chi. */
final class NoncentralT {
  private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();
  private static final int NODES = 80;

  private NoncentralT() {}

  /** P(T ≤ t) with ν degrees of freedom and noncentrality δ: E Φ(t·s − δ), s = √(χ²/ν). */
  static double below(double t, double freedom, double noncentrality) {
    double spread = 9 / Math.sqrt(2 * freedom);
    double from = Math.max(0, 1 - spread);
    GaussIntegrator gauss = GAUSS.legendre(NODES, from, 1 + spread);
    UnivariateFunction weighted = s -> density(s, freedom) * Normal.below(t * s - noncentrality);
    return gauss.integrate(weighted);
  }

  /** The noncentrality at which P(T ≤ t) has the value given. */
  static double noncentrality(double t, double freedom, double below) {
    double width = 10 + Math.abs(t);
    return new BrentSolver(1e-9)
        .solve(200, delta -> below(t, freedom, delta) - below, t - width, t + width);
  }

  private static double density(double s, double freedom) {
    if (s <= 0) {
      return 0;
    }
    double half = freedom / 2;
    return Math.exp(
        Math.log(2)
            + half * Math.log(half)
            - Gamma.logGamma(half)
            + (freedom - 1) * Math.log(s)
            - half * s * s);
  }
}
