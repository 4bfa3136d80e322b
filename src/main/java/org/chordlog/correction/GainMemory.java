package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * What is known of a machine's gain over its jobs, 1/mm a unit, and what the present job began
 * with. The gain of a job differs from the machine's by 10 % (it changes by a factor 1.25 over all
 * radii that pyramid rollers bend), anew in each job: so what is known of the machine grows with
 * every job and is not forgotten again.
 */
record GainMemory(double gain, double variance, double jobGain, double jobVariance) {
  private static final double JOB_TO_JOB = 0.1;

  static GainMemory of(GainPrior prior) {
    double variance = prior.standardUncertainty() * prior.standardUncertainty();
    return new GainMemory(prior.perMmPerUnit(), variance, prior.perMmPerUnit(), variance);
  }

  /**
   * At the end of a job that left that gain and variance. What the job taught is the difference in
   * precision to what it began with.
   */
  GainMemory afterJob(double ended, double endVariance) {
    double taught = 1 / endVariance - 1 / jobVariance;
    if (!(taught > 0)) {
      return withNextJob(gain, variance);
    }
    double shown = (ended / endVariance - jobGain / jobVariance) / taught;
    double noise = 1 / taught + square(JOB_TO_JOB * ended);
    double share = variance / (variance + noise);
    return withNextJob(gain + share * (shown - gain), variance * (1 - share));
  }

  private static GainMemory withNextJob(double gain, double variance) {
    return new GainMemory(gain, variance, gain, variance + square(JOB_TO_JOB * gain));
  }

  private static double square(double value) {
    return value * value;
  }

  void write(Packer to) {
    to.put(gain).put(variance).put(jobGain).put(jobVariance);
  }

  static GainMemory read(Unpacker from) {
    return new GainMemory(from.aDouble(), from.aDouble(), from.aDouble(), from.aDouble());
  }
}
