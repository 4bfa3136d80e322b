package org.chordlog.study;

import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;
import org.chordlog.stats.math.Interval;

/**
 * One slope over the number of the day, common to all runs, each with a level of its own, so that a
 * step from run to run is no drift.
 */
final class Drift {
  private final double[][] averages;
  private double products;
  private double squares;

  private Drift(double[][] averages) {
    this.averages = averages;
    for (double[] run : averages) {
      double mean = Means.mean(run);
      for (int day = 0; day < run.length; day++) {
        products += offset(run, day) * (run[day] - mean);
        squares += offset(run, day) * offset(run, day);
      }
    }
  }

  private static double offset(double[] run, int day) {
    return day - (run.length - 1) / 2.0;
  }

  /** Averages by run and day; empty where too few days are left to see scatter. */
  static Optional<Interval> of(double[][] averages, double confidence) {
    int degrees = averages.length * (averages[0].length - 1) - 1;
    if (degrees < 1) {
      return Optional.empty();
    }
    Drift drift = new Drift(averages);
    double slope = drift.products / drift.squares;
    double deviation = Math.sqrt(drift.residual(slope) / degrees / drift.squares);
    double half =
        TDistribution.of(degrees).inverseSurvivalProbability((1 - confidence) / 2) * deviation;
    return Optional.of(new Interval(slope, slope - half, slope + half));
  }

  private double residual(double slope) {
    double sum = 0;
    for (double[] run : averages) {
      double mean = Means.mean(run);
      for (int day = 0; day < run.length; day++) {
        double left = run[day] - mean - slope * offset(run, day);
        sum += left * left;
      }
    }
    return sum;
  }
}
