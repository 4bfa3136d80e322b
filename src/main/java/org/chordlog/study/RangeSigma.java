package org.chordlog.study;

import org.apache.commons.math3.analysis.solvers.BisectionSolver;
import org.apache.commons.math3.special.Gamma;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Factors;

/**
 * A standard deviation from the mean of g ranges of n values: R̄/d2*, d2* = √(d2² + d3²/g), whose
 * square behaves like χ²/ν (Patnaik 1950; Duncan, Quality Control and Industrial Statistics). ν is
 * where the relative variance of a χ with ν degrees of freedom is that of R̄: (ν/2)·(Γ(ν/2)/Γ((ν +
 * 1)/2))² − 1 = d3²/(g·d2²).
 */
record RangeSigma(double meanRange, int ranges, int size) {
  private static final double MOST_DEGREES = 1e6;

  RangeSigma {
    if (size > Factors.MOST) {
      String allowed = Factors.LEAST + " to " + Factors.MOST + ", or analysis of variance";
      throw new BadInput("range", size + " values", "are too many for the range method", allowed);
    }
  }

  /** d2*(g, n). */
  double d2Star() {
    Factors factors = Factors.of(size);
    return Math.sqrt(factors.d2() * factors.d2() + factors.d3() * factors.d3() / ranges);
  }

  double sigma() {
    return meanRange / d2Star();
  }

  double degreesOfFreedom() {
    Factors factors = Factors.of(size);
    double wanted = factors.d3() * factors.d3() / (ranges * factors.d2() * factors.d2());
    return new BisectionSolver(1e-10)
        .solve(400, nu -> relativeVariance(nu) - wanted, 0.1, MOST_DEGREES);
  }

  private static double relativeVariance(double nu) {
    double logs = Gamma.logGamma(nu / 2) - Gamma.logGamma((nu + 1) / 2);
    return nu / 2 * Math.exp(2 * logs) - 1;
  }

  MeanSquare meanSquare(String source) {
    return new MeanSquare(source, sigma() * sigma(), degreesOfFreedom());
  }
}
