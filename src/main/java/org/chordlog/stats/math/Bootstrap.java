package org.chordlog.stats.math;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.random.Well19937c;

/** Percentile bootstrap (Efron 1979) with a seed, so that the same values give the same digits. */
public final class Bootstrap {
  public static final int RESAMPLES = 1000;

  /** More values cost more time and gain nothing over Bissell's interval. */
  public static final int MOST = 300;

  private static final long SEED = 20_221_125;

  private Bootstrap() {}

  public static Interval interval(double[] values, ToDoubleFunction<Moments> index) {
    Well19937c random = new Well19937c(SEED);
    double[] indices = new double[RESAMPLES];
    for (int i = 0; i < RESAMPLES; i++) {
      Moments resampled = new Moments();
      for (int j = 0; j < values.length; j++) {
        resampled.add(values[random.nextInt(values.length)]);
      }
      indices[i] = index.applyAsDouble(resampled);
    }
    Arrays.sort(indices);
    Moments all = new Moments();
    Arrays.stream(values).forEach(all::add);
    return new Interval(index.applyAsDouble(all), at(indices, 0.025), at(indices, 0.975));
  }

  private static double at(double[] sorted, double part) {
    return sorted[(int) Math.round(part * (sorted.length - 1))];
  }
}
