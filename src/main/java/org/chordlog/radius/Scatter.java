package org.chordlog.radius;

import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/** Draws a scaled t, or a normal where the degrees of freedom are none or as good as infinite. */
record Scatter(
    RandomGenerator random, double sigma, double degrees, @Nullable GammaDistribution chi) {
  static Scatter of(RandomGenerator random, double sigma, double degrees) {
    boolean finite = degrees > 0 && degrees < StudentT.MOST_DEGREES;
    @Nullable GammaDistribution chi = finite ? new GammaDistribution(random, degrees / 2, 2) : null;
    return new Scatter(random, sigma, degrees, chi);
  }

  double next() {
    return sigma == 0 ? 0 : sigma * stretch() * random.nextGaussian();
  }

  /** √(ν/χ²) by which a normal becomes a t. */
  double stretch() {
    return chi == null ? 1 : Math.sqrt(degrees / chi.sample());
  }
}
