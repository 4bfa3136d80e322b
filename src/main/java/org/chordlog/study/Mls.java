package org.chordlog.study;

import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.chordlog.stats.math.Interval;

/**
 * Modified large sample intervals of sums and differences of mean squares, two-sided: Ting,
 * Burdick, Graybill, Jeyaratnam and Lu (1990), without their terms among mean squares of one sign;
 * Burdick and Larsen (1997) and Burdick, Borror and Montgomery (2003) for gauges. A single mean
 * square gets its exact χ² interval. Lower ends are at least 0, as variances are.
 */
final class Mls {
  private final double tail;

  Mls(double confidence) {
    tail = (1 - confidence) / 2;
  }

  Interval of(Combination variance) {
    double value = variance.value();
    double below = 0;
    double above = 0;
    for (Combination.Term term : variance.terms()) {
      boolean positive = term.weight() > 0;
      double square = term.value() * term.value();
      double g = lower(term.square());
      double h = upper(term.square());
      below += square * (positive ? g * g : h * h);
      above += square * (positive ? h * h : g * g);
    }
    below += crossed(variance, true);
    above += crossed(variance, false);
    double lower = Math.max(0, value - Math.sqrt(Math.max(0, below)));
    return new Interval(value, lower, Math.max(0, value + Math.sqrt(Math.max(0, above))));
  }

  /**
   * A sum of variances is no less than each of them. An estimate far below 0 of one takes the ends
   * below that, even to 0 on both sides.
   */
  static Interval notBelow(Interval sum, List<Interval> parts) {
    double lower = parts.stream().mapToDouble(Interval::lower).max().orElse(0);
    double upper = parts.stream().mapToDouble(Interval::upper).max().orElse(0);
    return new Interval(sum.value(), Math.max(sum.lower(), lower), Math.max(sum.upper(), upper));
  }

  /** G = 1 − n/χ²(1 − α/2; n). */
  private double lower(MeanSquare square) {
    double n = square.degreesOfFreedom();
    return square.exact()
        ? 0
        : 1 - n / ChiSquaredDistribution.of(n).inverseSurvivalProbability(tail);
  }

  /** H = n/χ²(α/2; n) − 1. */
  private double upper(MeanSquare square) {
    double n = square.degreesOfFreedom();
    return square.exact()
        ? 0
        : n / ChiSquaredDistribution.of(n).inverseCumulativeProbability(tail) - 1;
  }

  /** Terms of each positive with each negative mean square. */
  private double crossed(Combination variance, boolean below) {
    double sum = 0;
    for (Combination.Term plus : signed(variance, true)) {
      for (Combination.Term minus : signed(variance, false)) {
        double factor = factor(plus.square(), minus.square(), below);
        sum += factor * plus.value() * -minus.value();
      }
    }
    return sum;
  }

  private static List<Combination.Term> signed(Combination variance, boolean positive) {
    return variance.terms().stream()
        .filter(term -> positive == term.weight() > 0 && !term.square().exact())
        .toList();
  }

  private double factor(MeanSquare plus, MeanSquare minus, boolean below) {
    FDistribution f = FDistribution.of(plus.degreesOfFreedom(), minus.degreesOfFreedom());
    double g = below ? lower(plus) : upper(plus);
    double h = below ? upper(minus) : lower(minus);
    double q = below ? f.inverseSurvivalProbability(tail) : f.inverseCumulativeProbability(tail);
    return ((q - 1) * (q - 1) - g * g * q * q - h * h) / q;
  }
}
