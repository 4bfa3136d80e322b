package org.chordlog.stats.math;

import org.apache.commons.math3.special.Gamma;
import org.chordlog.measure.Check;

/**
 * Control chart factors for subgroups of {@code n} = 2 to 25 normal values (names as in ISO
 * 7870-2), by integration: d2 = ∫1 − Φⁿ − (1 − Φ)ⁿ (Tippett 1925), d3 from the distribution of the
 * range, c4 from the gamma function.
 */
public record Factors(int n, double d2, double d3, double c4) {
  public static final int LEAST = 2;
  public static final int MOST = 25;
  private static final Factors[] KNOWN = all();

  /** For subgroups of {@code n}. */
  public static Factors of(int n) {
    Check.within("subgroup size", n, LEAST, MOST);
    return KNOWN[n - LEAST];
  }

  /** Expected standard deviation of {@code n} values over sigma, for any n above 1. */
  public static double c4(double n) {
    double half = (n - 1) / 2;
    return Math.exp(Gamma.logGamma(half + 0.5) - Gamma.logGamma(half)) / Math.sqrt(half);
  }

  public double a() {
    return 3 / Math.sqrt(n);
  }

  public double a2() {
    return a() / d2;
  }

  public double a3() {
    return a() / c4;
  }

  public double b3() {
    return Math.max(0, b5() / c4);
  }

  public double b4() {
    return b6() / c4;
  }

  public double b5() {
    return Math.max(0, c4 - 3 * c5());
  }

  public double b6() {
    return c4 + 3 * c5();
  }

  public double d1Limit() {
    return Math.max(0, d2 - 3 * d3);
  }

  public double d2Limit() {
    return d2 + 3 * d3;
  }

  public double d3Limit() {
    return d1Limit() / d2;
  }

  public double d4Limit() {
    return d2Limit() / d2;
  }

  public double e2() {
    return 3 / d2;
  }

  public double e3() {
    return 3 / c4;
  }

  /** Standard deviation of the standard deviation of n values, over sigma. */
  public double c5() {
    return Math.sqrt(1 - c4 * c4);
  }

  private static Factors[] all() {
    double[] squares = RangeIntegrals.meanSquares(MOST);
    Factors[] factors = new Factors[MOST - LEAST + 1];
    for (int n = LEAST; n <= MOST; n++) {
      double d2 = RangeIntegrals.mean(n);
      factors[n - LEAST] = new Factors(n, d2, Math.sqrt(squares[n] - d2 * d2), c4(n));
    }
    return factors;
  }
}
