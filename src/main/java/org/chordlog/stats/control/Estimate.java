package org.chordlog.stats.control;

import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Mean and standard deviation of single values that control limits rest on; {@code
 * degreesOfFreedom} of the standard deviation, infinite where it is given. A sigma that can't be
 * told yet is NaN.
 */
public record Estimate(double mean, double sigma, double degreesOfFreedom) {
  static Estimate unknown(double mean) {
    return new Estimate(mean, Double.NaN, 0);
  }

  public static Estimate overall(Moments values) {
    return new Estimate(values.mean(), values.deviation(), values.n() - 1.0);
  }

  public boolean known() {
    return !Double.isNaN(sigma);
  }

  /**
   * Degrees of freedom of a scaled chi with the relative variance given (Patnaik 1950, as used for
   * ranges by Duncan, Quality Control and Industrial Statistics).
   */
  static double freedom(double relativeVariance) {
    return 1 / (2 * Math.sqrt(1 + 2 * relativeVariance) - 2);
  }

  void pack(Packer packer) {
    packer.put(mean).put(sigma).put(degreesOfFreedom);
  }

  static Estimate unpack(Unpacker from) {
    return new Estimate(from.aDouble(), from.aDouble(), from.aDouble());
  }
}
