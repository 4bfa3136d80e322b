package org.chordlog.stats.capability;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.Normal;
import org.jspecify.annotations.Nullable;

/** Capability indices of a normal characteristic with two-sided confidence intervals. */
public final class Capability {
  static final String SOURCE = "ISO 22514-2; NIST/SEMATECH e-Handbook 6.1.6";
  static final String BISSELL = "; interval after Bissell (1990)";
  private static final double Z = Normal.quantile((1 + Interval.CONFIDENCE) / 2);

  /**
   * Beyond so many degrees of freedom the root of chi-square over them is normal to within 1e-7,
   * and its quantiles are no longer found.
   */
  private static final double MOST_EXACT = 1e7;

  private final Limits limits;
  private final Estimate estimate;
  private final long n;

  public Capability(Limits limits, Estimate estimate, long n) {
    this.limits = limits;
    this.estimate = estimate;
    this.n = n;
  }

  public @Nullable Interval potential() {
    Double lower = limits.lower();
    Double upper = limits.upper();
    return lower == null || upper == null
        ? null
        : chiSquare((upper - lower) / (6 * estimate.sigma()), estimate.degreesOfFreedom());
  }

  @Nullable Interval lowerSide() {
    Double lower = limits.lower();
    return lower == null ? null : bissell((estimate.mean() - lower) / (3 * estimate.sigma()));
  }

  @Nullable Interval upperSide() {
    Double upper = limits.upper();
    return upper == null ? null : bissell((upper - estimate.mean()) / (3 * estimate.sigma()));
  }

  public @Nullable Interval nearer() {
    Interval low = lowerSide();
    Interval high = upperSide();
    return low == null || (high != null && high.value() < low.value()) ? high : low;
  }

  public static Interval chiSquare(double index, double freedom) {
    if (freedom > MOST_EXACT) {
      double half = index * Z / Math.sqrt(2 * freedom);
      return new Interval(index, index - half, index + half);
    }
    ChiSquaredDistribution chi = ChiSquaredDistribution.of(freedom);
    double error = 1 - Interval.CONFIDENCE;
    return new Interval(
        index,
        index * Math.sqrt(chi.inverseCumulativeProbability(error / 2) / freedom),
        index * Math.sqrt(chi.inverseCumulativeProbability(1 - error / 2) / freedom));
  }

  private Interval bissell(double index) {
    return bissell(index, n, estimate.degreesOfFreedom(), Z);
  }

  /** Ĉ ± z√(1/(9n) + Ĉ²/(2ν)), Bissell (1990), Applied Statistics 39, 331-340. */
  public static Interval bissell(double index, long n, double freedom, double z) {
    double half = z * Math.sqrt(1 / (9.0 * n) + index * index / (2 * freedom));
    return new Interval(index, index - half, index + half);
  }
}
