package org.chordlog.stats.math;

import org.apache.commons.numbers.gamma.Erfc;
import org.apache.commons.numbers.gamma.InverseErfc;

/** The standard normal distribution. */
public final class Normal {
  private static final double ROOT_2 = Math.sqrt(2);
  private static final double ROOT_2_PI = Math.sqrt(2 * Math.PI);

  private Normal() {}

  /** Density of the standard normal distribution. */
  public static double density(double z) {
    return Math.exp(-z * z / 2) / ROOT_2_PI;
  }

  /** Lower tail, accurate in both tails. */
  public static double below(double z) {
    return Erfc.value(-z / ROOT_2) / 2;
  }

  /** Quantile of the standard normal distribution; {@code p} within 0 and 1. */
  public static double quantile(double p) {
    return p < 0.5 ? -ROOT_2 * InverseErfc.value(2 * p) : ROOT_2 * InverseErfc.value(2 * (1 - p));
  }
}
