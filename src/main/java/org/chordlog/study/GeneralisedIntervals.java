package org.chordlog.study;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.stats.math.Interval;

/**
 * Generalised confidence intervals (Weerahandi 1993; Hamada and Weaver 2000 for gauges) of any
 * function of the expectations of independent mean squares: each expectation is drawn as the mean
 * square over χ²/ν, and the ends are percentiles of the function. The same seed gives the same
 * digits. Draws are made once and shared by all figures of a study.
 */
final class GeneralisedIntervals {
  static final int DRAWS = 10_000;
  private final double[][] expectations;
  private final double tail;

  GeneralisedIntervals(List<MeanSquare> squares, double confidence, long seed, int draws) {
    tail = (1 - confidence) / 2;
    RandomGenerator random = new Well19937c(seed);
    expectations = new double[draws][squares.size()];
    for (int i = 0; i < squares.size(); i++) {
      draw(squares.get(i), i, random);
    }
  }

  private void draw(MeanSquare square, int at, RandomGenerator random) {
    if (square.exact()) {
      Arrays.stream(expectations).forEach(row -> row[at] = square.value());
      return;
    }
    GammaDistribution chiSquared = new GammaDistribution(random, square.degreesOfFreedom() / 2, 2);
    for (double[] row : expectations) {
      row[at] = square.sumOfSquares() / chiSquared.sample();
    }
  }

  /** {@code quantity} gets the expectations in the order of the mean squares. */
  Interval of(double value, ToDoubleFunction<double[]> quantity) {
    return of(value, quantity, new Tails(1, 1));
  }

  /** How many times the claimed share of draws is left out below and above. */
  record Tails(double below, double above) {}

  Interval of(double value, ToDoubleFunction<double[]> quantity, Tails tails) {
    double[] drawn = Arrays.stream(expectations).mapToDouble(quantity).sorted().toArray();
    return new Interval(
        value, at(drawn, tails.below() * tail), at(drawn, 1 - tails.above() * tail));
  }

  private static double at(double[] sorted, double part) {
    return sorted[(int) Math.round(part * (sorted.length - 1))];
  }
}
