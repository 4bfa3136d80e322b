package org.chordlog.study;

import java.util.List;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.GeneralisedIntervals.Tails;
import org.chordlog.study.VarianceComponents.Component;

/**
 * The total variance and shares of it with generalised intervals; components below 0 count as 0. In
 * a split study, where four or five sources are drawn at once, draws vary more than the truth is
 * uncertain: there more of them is left out, how much was found by simulation of invented studies
 * (error rates, studies of the gauge). Where two mean squares are all that matters such an interval
 * still holds 93.5 % or more.
 */
final class Shares {
  /** Of the gauge's share where the product has components of its own, such as places. */
  private static final Tails SPLIT = new Tails(1.2, 1.2);

  /** Of one of those components that is what four mean squares leave, below. */
  private static final Tails REMAINDER = new Tails(1.6, 1);

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
    boolean remainder =
        parts.size() == 1 && split() && parts.get(0).combination().terms().size() > 2;
    return intervals.of(
        value(parts),
        drawn -> sum(wanted, drawn) / sum(total, drawn),
        remainder ? REMAINDER : new Tails(1, 1));
  }

  /**
   * The total variance. A modified large sample interval of this sum is too wide where one of its
   * mean squares has few degrees of freedom; this one is not (error rates, studies of the gauge).
   */
  Interval ofTotal() {
    double[] weights = VarianceComponents.sum(all.components()).weights(squares);
    return intervals.of(
        VarianceComponents.variance(all.components()), drawn -> combined(weights, drawn));
  }

  /** Whether the product has components of its own. */
  boolean split() {
    return all.product().size() > 1;
  }

  private double value(List<Component> parts) {
    return VarianceComponents.variance(parts) / VarianceComponents.variance(all.components());
  }

  /**
   * The gauge's share. In a split study only the sums for gauge and product count as 0 below it.
   */
  Interval ofGauge() {
    if (!split()) {
      return of(all.gauge());
    }
    double[] gauge = all.gaugeCombination().weights(squares);
    double[] product = VarianceComponents.sum(all.product()).weights(squares);
    return intervals.of(
        value(all.gauge()),
        drawn -> {
          double above = Math.max(0, combined(gauge, drawn));
          return above / (above + Math.max(0, combined(product, drawn)));
        },
        SPLIT);
  }

  private double[][] weights(List<Component> parts) {
    return parts.stream().map(part -> part.combination().weights(squares)).toArray(double[][]::new);
  }

  private static double sum(double[][] parts, double[] drawn) {
    double sum = 0;
    for (double[] weights : parts) {
      sum += Math.max(0, combined(weights, drawn));
    }
    return sum;
  }

  private static double combined(double[] weights, double[] drawn) {
    double variance = 0;
    for (int i = 0; i < weights.length; i++) {
      variance += weights[i] * drawn[i];
    }
    return variance;
  }
}
