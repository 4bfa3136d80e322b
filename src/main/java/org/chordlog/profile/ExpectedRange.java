package org.chordlog.profile;

import org.apache.commons.numbers.gamma.Erfc;

/**
 * Expected range of n standard normal values: ∫ 1 − Φⁿ − (1 − Φ)ⁿ (L. H. C. Tippett 1925), by the
 * trapezoidal rule, which converges fast where the integrand falls off smoothly at both ends.
 */
final class ExpectedRange {
  private static final double TAIL = 8.5;
  private static final double STEP = 0.1;

  private ExpectedRange() {}

  static double of(int n) {
    double sum = 0;
    for (double z = -TAIL; z <= TAIL; z += STEP) {
      double below = Erfc.value(-z / Math.sqrt(2)) / 2;
      sum += STEP * (1 - StrictMath.pow(below, n) - StrictMath.pow(1 - below, n));
    }
    return sum;
  }
}
