package org.chordlog.study;

import org.apache.commons.math3.analysis.solvers.BisectionSolver;
import org.apache.commons.math3.special.Gamma;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Factors;
import org.chordlog.stats.math.RangeIntegrals;

/**
 * A standard deviation from the mean of g ranges of n values: R̄/d2*, d2* = √(d2² + d3²/g), whose
 * square behaves like χ²/ν (Patnaik 1950; Duncan, Quality Control and Industrial Statistics). ν is
 * where the relative variance of a χ with ν degrees of freedom is that of R̄: (ν/2)·(Γ(ν/2)/Γ((ν +
 * 1)/2))² − 1 = d3²/(g·d2²).
 */
record RangeSigma(double meanRange, int ranges, int size) {
  private static final double MOST_DEGREES = 1e6;

  /** A range of more values says next to nothing of their scatter. */
  private static final int MOST_VALUES = 100;

  RangeSigma {
    if (size > MOST_VALUES) {
      String allowed = Factors.LEAST + " to " + MOST_VALUES + ", or analysis of variance";
      throw new BadInput("range", size + " values", "are too many for the range method", allowed);
    }
  }

  /** d2*(g, n). */
  double d2Star() {
    double d2 = d2();
    double d3 = d3();
    return Math.sqrt(d2 * d2 + d3 * d3 / ranges);
  }

  /** Control charts keep theirs up to 25 values; larger ones are made when they are asked for. */
  private double d2() {
    return size <= Factors.MOST ? Factors.of(size).d2() : RangeIntegrals.mean(size);
  }

  private double d3() {
    return size <= Factors.MOST ? Factors.of(size).d3() : RangeIntegrals.deviation(size);
  }

  double sigma() {
    return meanRange / d2Star();
  }

  double degreesOfFreedom() {
    double ratio = d3() / d2();
    double wanted = ratio * ratio / ranges;
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
