package org.chordlog.bench;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.stats.math.AndersonDarling;
import org.chordlog.stats.math.FittedInterval;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.JohnsonFit;
import org.chordlog.stats.math.Normal;
import org.jspecify.annotations.Nullable;

/**
 * How often the interval of Ppk by percentiles holds the true index: samples of invented
 * distributions that are refused as normal and fitted by Johnson, as the service does it. Argument:
 * how many samples each (1000: some two minutes of one core).
 */
public final class FittedIndexCoverage {
  private static final double INDEX = 1.2;

  private FittedIndexCoverage() {}

  public static void main(String[] arguments) {
    int samples = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
    for (int size : new int[] {50, 100, 200, 500}) {
      say("lognormal, sigma 0.5", z -> Math.exp(0.5 * z), size, samples);
      say(
          "gamma, shape 4",
          of(new GammaDistribution(4, 1)::inverseCumulativeProbability),
          size,
          samples);
      say("Johnson unbounded", z -> Math.sinh((z + 0.5) / 1.5), size, samples);
      say("Johnson bounded", z -> 1 / (1 + Math.exp(-(z + 0.5) / 1.2)), size, samples);
      say(
          "Student's t, 5 degrees",
          of(new TDistribution(5)::inverseCumulativeProbability),
          size,
          samples);
      say("uniform", Normal::below, size, samples);
    }
  }

  private static DoubleUnaryOperator of(DoubleUnaryOperator quantile) {
    return z -> quantile.applyAsDouble(Normal.below(z));
  }

  private static void say(String name, DoubleUnaryOperator value, int size, int samples) {
    Rate holds = new Rate();
    Rate above = new Rate();
    for (int i = 0; i < samples; i++) {
      Interval interval = interval(value, size, 1_000_003L * i + size);
      if (interval != null) {
        holds.add(interval.lower() <= INDEX && INDEX <= interval.upper());
        above.add(interval.lower() > INDEX);
      }
    }
    System.out.printf(Locale.ROOT, "%s, %d: holds %s, too high %s%n", name, size, holds, above);
  }

  /** Null where the sample passes as normal, or no shape fits it better. */
  private static @Nullable Interval interval(DoubleUnaryOperator value, int size, long seed) {
    Well19937c random = new Well19937c(seed);
    double[] values = new double[size];
    for (int i = 0; i < size; i++) {
      values[i] = value.applyAsDouble(random.nextGaussian());
    }
    AndersonDarling test = AndersonDarling.of(values);
    JohnsonFit fit = test.pValue() < 0.05 ? JohnsonFit.of(values) : null;
    return fit == null || fit.distance(values) >= test.statistic()
        ? null
        : FittedInterval.of(values, fit, each -> nearer(each, value));
  }

  /** Limits at {@value #INDEX} times the true spread on either side. */
  private static double nearer(JohnsonFit fit, DoubleUnaryOperator value) {
    double middle = value.applyAsDouble(0);
    double lower = middle - INDEX * (middle - value.applyAsDouble(-3));
    double upper = middle + INDEX * (value.applyAsDouble(3) - middle);
    double centre = fit.quantile(0);
    return Math.min(
        (centre - lower) / (centre - fit.quantile(-3)),
        (upper - centre) / (fit.quantile(3) - centre));
  }
}
