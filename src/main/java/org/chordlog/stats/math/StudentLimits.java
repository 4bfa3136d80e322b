package org.chordlog.stats.math;

import org.apache.commons.statistics.distribution.TDistribution;

/** Two-sided limits of Student's t at one error, looked up by whole degrees of freedom. */
public final class StudentLimits {
  private static final int MOST = 2000;
  private final double error;
  private final double[] limits = new double[MOST + 1];

  public StudentLimits(double error) {
    this.error = error;
  }

  /** Of the degrees of freedom rounded down, at least 1; beyond 2,000 those of 2,000. */
  public double of(double freedom) {
    int at = (int) Math.max(1, Math.min(MOST, freedom));
    if (limits[at] == 0) {
      limits[at] = TDistribution.of(at).inverseSurvivalProbability(error / 2);
    }
    return limits[at];
  }

  /** Two-sided chance of a t as far out as that one. */
  public static double chance(double t, double freedom) {
    return 2 * TDistribution.of(freedom).survivalProbability(Math.abs(t));
  }
}
