package org.chordlog.stats.math;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.jspecify.annotations.Nullable;

/**
 * Percentile bootstrap at 95 % (Efron and Tibshirani 1993, An Introduction to the Bootstrap,
 * section 13.3) of what is read from a Johnson fit. A fit rests on four percentiles alone, so only
 * these are drawn: the parts between them are spread as the order statistics of a sample are (gamma
 * variates over their sum, Devroye 1986, Non-Uniform Random Variate Generation, section V.3). With
 * a seed, so that the same values give the same digits.
 */
public final class FittedInterval {
  private static final int DRAWS = 1000;

  /** Fewest draws that must allow a fit. */
  private static final int LEAST_FITS = 950;

  private static final long SEED = 20_261_126;
  private static final double ERROR = (1 - Interval.CONFIDENCE) / 2;
  private final double[] sorted;
  private final GammaDistribution[] between;

  private FittedInterval(double[] values) {
    sorted = values.clone();
    Arrays.sort(sorted);
    between = between(new Well19937c(SEED), JohnsonFit.parts());
  }

  /** {@code figure} of the fit to the values; null where too few of the draws can be fitted. */
  public static @Nullable Interval of(
      double[] values, JohnsonFit fit, ToDoubleFunction<JohnsonFit> figure) {
    double[] drawn = new FittedInterval(values).drawn(figure);
    return drawn.length < LEAST_FITS
        ? null
        : new Interval(figure.applyAsDouble(fit), at(drawn, ERROR), at(drawn, 1 - ERROR));
  }

  private GammaDistribution[] between(Well19937c random, double[] parts) {
    int count = parts.length;
    GammaDistribution[] gammas = new GammaDistribution[count + 1];
    for (int i = 0; i <= count; i++) {
      double part = (i < count ? parts[i] : 1) - (i == 0 ? 0 : parts[i - 1]);
      double half = i == 0 || i == count ? 0.5 : 0;
      gammas[i] = new GammaDistribution(random, sorted.length * part + half, 1);
    }
    return gammas;
  }

  private double[] drawn(ToDoubleFunction<JohnsonFit> figure) {
    double[] figures = new double[DRAWS];
    int fitted = 0;
    for (int i = 0; i < DRAWS; i++) {
      JohnsonFit fit = JohnsonFit.through(percentiles());
      double value = fit == null ? Double.NaN : figure.applyAsDouble(fit);
      if (!Double.isNaN(value)) {
        figures[fitted++] = value;
      }
    }
    double[] all = Arrays.copyOf(figures, fitted);
    Arrays.sort(all);
    return all;
  }

  /** The four percentiles of another sample of that size. */
  private double[] percentiles() {
    double[] sums = new double[between.length];
    double sum = 0;
    for (int i = 0; i < sums.length; i++) {
      sum += between[i].sample();
      sums[i] = sum;
    }
    double[] values = new double[sums.length - 1];
    for (int i = 0; i < values.length; i++) {
      values[i] = below(sums[i] / sum);
    }
    return values;
  }

  /** The value below which that part of the sample lies, by type 5 of Hyndman and Fan 1996. */
  private double below(double part) {
    double place = Math.max(0, Math.min(sorted.length - 1.0, part * sorted.length - 0.5));
    int before = (int) place;
    int after = Math.min(sorted.length - 1, before + 1);
    return sorted[before] + (place - before) * (sorted[after] - sorted[before]);
  }

  private static double at(double[] rising, double part) {
    return rising[(int) Math.min(rising.length - 1L, Math.round(part * (rising.length - 1)))];
  }
}
