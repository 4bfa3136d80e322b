package org.chordlog.study;

import java.util.Arrays;
import java.util.List;

/**
 * Means and sums of squares, in two passes: a mean first, then squares of what is left, so that
 * large values lose no digits.
 */
final class Means {
  private Means() {}

  /** Corrected for rounding by a second pass over the residuals. */
  static double mean(double... values) {
    double rough = values[0];
    double left = 0;
    for (double value : values) {
      left += value - rough;
    }
    double mean = rough + left / values.length;
    double rest = 0;
    for (double value : values) {
      rest += value - mean;
    }
    return mean + rest / values.length;
  }

  /** Sum of squared deviations from their mean. */
  static double squares(double... values) {
    double mean = mean(values);
    return Arrays.stream(values).map(value -> (value - mean) * (value - mean)).sum();
  }

  static double deviation(double... values) {
    return Math.sqrt(squares(values) / (values.length - 1));
  }

  static double[] array(List<Double> values) {
    return values.stream().mapToDouble(value -> value).toArray();
  }

  static double range(double... values) {
    return Arrays.stream(values).max().orElseThrow() - Arrays.stream(values).min().orElseThrow();
  }
}
