package org.chordlog.stats.math;

import java.util.Arrays;

/**
 * Anderson-Darling test of normality with mean and standard deviation estimated (D'Agostino and
 * Stephens 1986, case 3): A², A² adjusted for n (Table 4.7) and its p-value (Table 4.9).
 */
public record AndersonDarling(double statistic, double adjusted, double pValue) {
  /** Fewest values that the adjustment is made for. */
  public static final int LEAST = 8;

  /** Of values with some spread, at least {@value #LEAST} of them. */
  public static AndersonDarling of(double[] values) {
    Moments moments = new Moments();
    Arrays.stream(values).forEach(moments::add);
    double statistic =
        statistic(
            Arrays.stream(values)
                .map(value -> (value - moments.mean()) / moments.deviation())
                .toArray());
    double n = values.length;
    double adjusted = statistic * (1 + 0.75 / n + 2.25 / n / n);
    return new AndersonDarling(statistic, adjusted, pValue(adjusted));
  }

  /** A² of values that are standard normal under the hypothesis; e-Handbook 1.3.5.14. */
  static double statistic(double[] standardised) {
    double[] z = standardised.clone();
    Arrays.sort(z);
    double sum = 0;
    for (int i = 0; i < z.length; i++) {
      double nearTail = Math.max(Normal.below(-Math.abs(z[i])), Double.MIN_NORMAL);
      double below = z[i] < 0 ? Math.log(nearTail) : Math.log1p(-nearTail);
      double above = z[i] < 0 ? Math.log1p(-nearTail) : Math.log(nearTail);
      sum += (2.0 * i + 1) * below + (2.0 * (z.length - i) - 1) * above;
    }
    return -z.length - sum / z.length;
  }

  private static double pValue(double a) {
    if (a >= 0.6) {
      return a > 13 ? 0 : Math.exp(1.2937 - 5.709 * a + 0.0186 * a * a);
    }
    if (a >= 0.34) {
      return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
    }
    return a >= 0.2
        ? 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a)
        : 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
  }
}
