package org.chordlog.radius;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Quantiles of Student's t for whole degrees of freedom (a fraction is cut off, GUM G.4.1),
 * remembered in a table up to 200 and by expansion above (Abramowitz and Stegun 26.7.5).
 */
final class StudentT {
  /** Two-sided 95.45 %: k = 2 at infinity. */
  static final StudentT COVERAGE = new StudentT(0.5 + 0.9544997361036416 / 2);

  /** One-sided 95 %: 1.645 at infinity. */
  static final StudentT ONE_SIDED = new StudentT(0.95);

  /** As good as infinite: finite so that it can be stored and sent. */
  static final double MOST_DEGREES = 1e6;

  private static final int TABLE = 200;
  private final double[] quantiles = new double[TABLE + 1];
  private final double normal;

  StudentT(double probability) {
    normal = new NormalDistribution(null, 0, 1).inverseCumulativeProbability(probability);
    for (int nu = 1; nu <= TABLE; nu++) {
      quantiles[nu] = new TDistribution(null, nu).inverseCumulativeProbability(probability);
    }
  }

  double quantile(double degreesOfFreedom) {
    if (degreesOfFreedom >= MOST_DEGREES) {
      return normal;
    }
    int nu = Math.max(1, (int) degreesOfFreedom);
    return nu <= TABLE ? quantiles[nu] : expansion(nu);
  }

  private double expansion(int nu) {
    double z = normal;
    double z2 = z * z;
    double first = z * (z2 + 1) / 4;
    double second = z * ((5 * z2 + 16) * z2 + 3) / 96;
    double third = z * (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384;
    return z + (first + (second + third / nu) / nu) / nu;
  }
}
