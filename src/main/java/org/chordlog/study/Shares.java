package org.chordlog.study;

import java.util.List;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.VarianceComponents.Component;

/** Shares of the total variance with generalised intervals; components below 0 count as 0. */
final class Shares {
  private final VarianceComponents all;
  private final List<MeanSquare> squares;
  private final GeneralisedIntervals intervals;
  private final double[][] total;

  Shares(VarianceComponents all, StudySettings settings) {
    this(all, settings.evaluation().confidence(), settings.seed(), GeneralisedIntervals.DRAWS);
  }

  Shares(VarianceComponents all, double confidence, long seed, int draws) {
    this.all = all;
    squares = all.squares();
    intervals = new GeneralisedIntervals(squares, confidence, seed, draws);
    total = weights(all.components());
  }

  /** Variance of these components over the total variance. */
  Interval of(List<Component> parts) {
    double[][] wanted = weights(parts);
    double value =
        VarianceComponents.variance(parts) / VarianceComponents.variance(all.components());
    return intervals.of(value, drawn -> sum(wanted, drawn) / sum(total, drawn));
  }

  private double[][] weights(List<Component> parts) {
    return parts.stream().map(part -> part.combination().weights(squares)).toArray(double[][]::new);
  }

  private static double sum(double[][] parts, double[] drawn) {
    double sum = 0;
    for (double[] weights : parts) {
      double variance = 0;
      for (int i = 0; i < weights.length; i++) {
        variance += weights[i] * drawn[i];
      }
      sum += Math.max(0, variance);
    }
    return sum;
  }
}
