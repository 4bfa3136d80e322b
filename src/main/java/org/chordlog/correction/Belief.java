package org.chordlog.correction;

import java.util.List;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * A Gaussian over the level of the pieces, permil, and the gain of the scale, permil for one unit.
 * Linear in both because the recorded amount of a correction is known, so each step is exact
 * (Kalman filter).
 */
record Belief(
    double level, double gain, double levelVariance, double covariance, double gainVariance) {
  /** The level may have wandered. */
  Belief widened(double variance) {
    return new Belief(level, gain, levelVariance + variance, covariance, gainVariance);
  }

  /** A step of the level that is known with that variance; it teaches nothing of the gain. */
  Belief shifted(double step, double variance) {
    return new Belief(level + step, gain, levelVariance + variance, covariance, gainVariance);
  }

  /** Nothing more is known of the level than that; what was learned of the gain stays. */
  Belief withLevel(double newLevel, double variance) {
    return new Belief(newLevel, gain, variance, 0, gainVariance);
  }

  /** Whether what people say of the gain is known at least as well, relative to its size. */
  boolean gainNoBetterThan(GainPrior said) {
    double own = Math.sqrt(gainVariance) * Math.abs(said.perMmPerUnit());
    return own >= said.standardUncertainty() * Math.abs(gain) * (1 - 1e-9);
  }

  Belief withGain(double newGain, double variance) {
    return new Belief(level, newGain, levelVariance, 0, variance);
  }

  /** The rollers were moved; the variance is that of the level from the error of the move. */
  Belief moved(double amount, double errorVariance) {
    return new Belief(
        level + gain * amount,
        gain,
        levelVariance + 2 * amount * covariance + amount * amount * gainVariance + errorVariance,
        covariance + amount * gainVariance,
        gainVariance);
  }

  /** After a reading of that variance. */
  Belief heard(double reading, double variance) {
    double total = levelVariance + variance;
    double share = levelVariance / total;
    double ofGain = covariance / total;
    double innovation = reading - level;
    return new Belief(
        level + share * innovation,
        gain + ofGain * innovation,
        levelVariance * (1 - share),
        covariance * (1 - share),
        gainVariance - ofGain * covariance);
  }

  /** The Gaussian with mean and covariance of a mixture whose weights add up to 1. */
  static Belief mixture(List<Belief> parts, double[] weights) {
    double level = 0;
    double gain = 0;
    for (int k = 0; k < weights.length; k++) {
      level += weights[k] * parts.get(k).level;
      gain += weights[k] * parts.get(k).gain;
    }
    double p = 0;
    double c = 0;
    double v = 0;
    for (int k = 0; k < weights.length; k++) {
      Belief part = parts.get(k);
      double offLevel = part.level - level;
      double offGain = part.gain - gain;
      p += weights[k] * (part.levelVariance + offLevel * offLevel);
      c += weights[k] * (part.covariance + offLevel * offGain);
      v += weights[k] * (part.gainVariance + offGain * offGain);
    }
    return new Belief(level, gain, p, c, v);
  }

  /** For a target whose curvature is the old one's divided by {@code ratio}. */
  Belief rescaled(double ratio) {
    double square = ratio * ratio;
    return new Belief(
        Aim.PERMIL * ((1 + level / Aim.PERMIL) * ratio - 1),
        gain * ratio,
        levelVariance * square,
        covariance * square,
        gainVariance * square);
  }

  /** No amount can be named: not even the sign of the gain is known well. */
  boolean blind() {
    return gain * gain < 4 * gainVariance;
  }

  double levelUncertainty() {
    return Math.sqrt(levelVariance);
  }

  double gainUncertainty() {
    return Math.sqrt(gainVariance);
  }

  void write(Packer to) {
    to.put(level).put(gain).put(levelVariance).put(covariance).put(gainVariance);
  }

  static Belief read(Unpacker from) {
    return new Belief(
        from.aDouble(), from.aDouble(), from.aDouble(), from.aDouble(), from.aDouble());
  }
}
