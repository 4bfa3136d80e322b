package org.chordlog.study;

import org.apache.commons.statistics.distribution.TDistribution;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.StudyResult.Size;

/** Independent readings of one thing: their mean by Student's t, their variance by χ². */
record Replicates(int count, double mean, double deviation) {
  static Replicates of(double... values) {
    if (values.length < 2) {
      throw new BadInput("value", values.length, "is too few readings", "2 or more");
    }
    Replicates sample = new Replicates(values.length, Means.mean(values), Means.deviation(values));
    if (sample.deviation == 0) {
      String allowed = "readings that vary; a step this coarse shows nothing of the gauge";
      throw new BadInput("value", values[0], "is the same in every row", allowed);
    }
    return sample;
  }

  Size size() {
    return new Size(1, 1, count, count + " readings on one master");
  }

  double degreesOfFreedom() {
    return count - 1.0;
  }

  double deviationOfMean() {
    return deviation / Math.sqrt(count);
  }

  double quantile(double confidence) {
    return TDistribution.of(degreesOfFreedom()).inverseSurvivalProbability((1 - confidence) / 2);
  }

  /** Mean less {@code reference}. */
  Interval difference(double reference, double confidence) {
    double half = quantile(confidence) * deviationOfMean();
    double value = mean - reference;
    return new Interval(value, value - half, value + half);
  }

  MeanSquare variance() {
    return new MeanSquare("repeat", deviation * deviation, degreesOfFreedom());
  }

  Interval variance(double confidence) {
    return new Mls(confidence).of(Combination.of(variance()));
  }

  /** Student's t of the mean against {@code reference}. */
  StudyTest test(double reference) {
    double t = (mean - reference) / deviationOfMean();
    double p = 2 * TDistribution.of(degreesOfFreedom()).survivalProbability(Math.abs(t));
    String says =
        p < StudyTest.LEVEL
            ? "A bias is seen, p " + Numbers.probability(p) + "."
            : "No bias is seen, p " + Numbers.probability(p) + ".";
    return new StudyTest("bias", t, degreesOfFreedom(), null, p, says);
  }
}
