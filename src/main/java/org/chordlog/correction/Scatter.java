package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Variance of pieces about their level, from half squared differences of neighbours, which neither
 * a drift nor a step that is left out inflates much. A difference carries 2/3 of what a piece
 * tells; one beyond 3 standard deviations counts as that. {@code last} is NaN where the next piece
 * has no neighbour.
 */
record Scatter(double sum, double weight, double last) {
  private static final double EFFICIENCY = 2 / 3.0;
  private static final double MOST = 9;

  static Scatter prior(double deviation, double weight) {
    return new Scatter(weight * deviation * deviation, weight, Double.NaN);
  }

  double variance() {
    return sum / weight;
  }

  Scatter with(double value) {
    if (Double.isNaN(last)) {
      return new Scatter(sum, weight, value);
    }
    double difference = value - last;
    double square = Math.min(difference * difference / 2, MOST * sum / weight);
    return new Scatter(sum + square * EFFICIENCY, weight + EFFICIENCY, value);
  }

  Scatter cut() {
    return new Scatter(sum, weight, Double.NaN);
  }

  Scatter rescaled(double ratio) {
    return new Scatter(sum * ratio * ratio, weight, Double.NaN);
  }

  void write(Packer to) {
    to.put(sum).put(weight).put(last);
  }

  static Scatter read(Unpacker from) {
    return new Scatter(from.aDouble(), from.aDouble(), from.aDouble());
  }
}
