package org.chordlog.stats.math;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.random.Well19937c;

/**
 * Bootstrap-t interval at 95 % (Efron and Tibshirani 1993, An Introduction to the Bootstrap,
 * section 12.5), of the logarithm where the index is positive. The percentile interval that it
 * replaces held 79 to 92 % for 10 to 100 normal values and erred to the unsafe side, and the
 * bias-corrected one (BCa, ibid. chapter 14) less than this. With a seed, so that the same values
 * give the same digits.
 */
public final class Bootstrap {
  public static final int RESAMPLES = 1000;

  /** Fewest values that it was found to hold for. */
  public static final int LEAST = 25;

  /** More values cost more time and gain nothing over Bissell's interval. */
  public static final int MOST = 300;

  private static final long SEED = 20_221_125;
  private static final double ERROR = (1 - Interval.CONFIDENCE) / 2;

  private Bootstrap() {}

  /** Of an index and its standard error, each from moments. */
  public static Interval interval(
      double[] values, ToDoubleFunction<Moments> index, ToDoubleFunction<Moments> error) {
    Moments all = new Moments();
    Arrays.stream(values).forEach(all::add);
    double value = index.applyAsDouble(all);
    boolean log = value > 0;
    double own = error.applyAsDouble(all) / (log ? value : 1);
    double[] ts = studentised(values, index, error, value);
    double lower = place(value, -at(ts, 1 - ERROR) * own, log);
    double upper = place(value, -at(ts, ERROR) * own, log);
    return new Interval(value, lower, upper);
  }

  private static double place(double value, double distance, boolean log) {
    return log ? value * Math.exp(distance) : value + distance;
  }

  private static double[] studentised(
      double[] values,
      ToDoubleFunction<Moments> index,
      ToDoubleFunction<Moments> error,
      double value) {
    Well19937c random = new Well19937c(SEED);
    double[] ts = new double[RESAMPLES];
    for (int i = 0; i < RESAMPLES; i++) {
      Moments resampled = new Moments();
      for (int j = 0; j < values.length; j++) {
        resampled.add(values[random.nextInt(values.length)]);
      }
      double resample = index.applyAsDouble(resampled);
      double own = error.applyAsDouble(resampled);
      ts[i] = value > 0 ? Math.log(resample / value) * resample / own : (resample - value) / own;
    }
    return Arrays.stream(ts).filter(Double::isFinite).sorted().toArray();
  }

  private static double at(double[] sorted, double part) {
    return sorted.length == 0 ? Double.NaN : sorted[(int) Math.round(part * (sorted.length - 1))];
  }
}
