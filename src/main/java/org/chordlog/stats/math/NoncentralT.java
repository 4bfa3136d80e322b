package org.chordlog.stats.math;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;

/** The noncentral t distribution, by integration over the standard deviation's chi. */
public final class NoncentralT {
  private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();
  private static final int NODES = 80;

  private NoncentralT() {}

  /** P(T ≤ t) with ν degrees of freedom and noncentrality δ: E Φ(t·s − δ), s = √(χ²/ν). */
  public static double below(double t, double freedom, double noncentrality) {
    double spread = 9 / Math.sqrt(2 * freedom);
    double from = Math.max(0, 1 - spread);
    GaussIntegrator gauss = GAUSS.legendre(NODES, from, 1 + spread);
    double scale = logScale(freedom);
    UnivariateFunction weighted =
        s -> density(s, freedom, scale) * Normal.below(t * s - noncentrality);
    return gauss.integrate(weighted);
  }

  /** The noncentrality at which P(T ≤ t) has the value given. */
  public static double noncentrality(double t, double freedom, double below) {
    double width = 10 + Math.abs(t);
    return new BrentSolver(1e-9)
        .solve(200, delta -> below(t, freedom, delta) - below, t - width, t + width);
  }

  /** Density of the root of χ²/ν at s, whose part without s is given by its logarithm. */
  private static double density(double s, double freedom, double logScale) {
    return s <= 0 ? 0 : Math.exp(logScale + (freedom - 1) * Math.log(s) - freedom / 2 * s * s);
  }

  private static double logScale(double freedom) {
    double half = freedom / 2;
    return Math.log(2) + half * Math.log(half) - Gamma.logGamma(half);
  }
}
