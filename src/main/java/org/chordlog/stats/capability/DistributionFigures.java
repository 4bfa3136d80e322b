package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.AndersonDarling;
import org.chordlog.stats.math.FittedInterval;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.JohnsonFit;

/**
 * Normality, and where it fails the percentile indices of ISO 22514-2 with a fitted Johnson
 * distribution; on the newest {@value Window#SIZE} values.
 */
final class DistributionFigures {
  private static final double THREE_SIGMA = 3;
  private static final String SOURCE = "D'Agostino and Stephens 1986, tables 4.7 and 4.9";
  private static final String SOURCE_OF_FIT = "ISO 22514-2; Slifker and Shapiro 1980";
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** Fewest values for an interval of the fit. */
  private static final int LEAST = 50;

  private static final String HOLDS =
      "; percentile bootstrap, seed fixed; holds 94 % or more where such a shape is behind the"
          + " readings, and errs to the low side where it is not";

  private final StatisticsPlan plan;
  private final Shape shape;
  private final List<Figure> figures = new ArrayList<>();

  DistributionFigures(StatisticsPlan plan, Shape shape) {
    this.plan = plan;
    this.shape = shape;
  }

  List<Figure> figures() {
    AndersonDarling test = shape.test();
    if (test == null) {
      figures.add(
          Figures.absent(
              "andersonDarling",
              "",
              "needs " + AndersonDarling.LEAST + " readings that are not all equal"));
      return figures;
    }
    String on = "on the newest " + shape.values().length + " readings";
    figures.add(
        Figures.plain("andersonDarling", test.adjusted(), "", "A² adjusted for n, " + on, SOURCE));
    figures.add(
        Figures.plain("normalityPValue", test.pValue(), "", "Anderson-Darling, " + on, SOURCE));
    if (shape.refused()) {
      percentiles();
    }
    return figures;
  }

  private void percentiles() {
    Shape.Fitted fitted = shape.fitted();
    if (fitted == null) {
      figures.add(
          Figures.absent(
              "percentile99.865",
              plan.unit(),
              "no Johnson distribution fits better than the normal one"));
      return;
    }
    JohnsonFit fit = fitted.distribution();
    double low = fit.quantile(-THREE_SIGMA);
    double middle = fit.quantile(0);
    double high = fit.quantile(THREE_SIGMA);
    String method =
        fit.family() + " fitted, A² " + String.format(Locale.ROOT, "%.3f", fitted.distance());
    add("percentile0.135", low, plan.unit(), method);
    add("percentile50", middle, plan.unit(), method);
    add("percentile99.865", high, plan.unit(), method);
    indices(fit, method);
    nonconforming(fit, method);
  }

  private void indices(JohnsonFit fit, String method) {
    if (plan.limits().lower() != null && plan.limits().upper() != null) {
      index("PpPercentile", fit, this::both, "(USL - LSL)/(X99.865 - X0.135), " + method);
    }
    if (plan.limits().any()) {
      index(
          "PpkPercentile",
          fit,
          this::nearer,
          "distance of the nearer limit from X50 over that of its percentile, " + method);
    }
  }

  private double both(JohnsonFit fit) {
    double room =
        Objects.requireNonNull(plan.limits().upper())
            - Objects.requireNonNull(plan.limits().lower());
    return room / (fit.quantile(THREE_SIGMA) - fit.quantile(-THREE_SIGMA));
  }

  private double nearer(JohnsonFit fit) {
    Double lower = plan.limits().lower();
    Double upper = plan.limits().upper();
    double middle = fit.quantile(0);
    double down =
        lower == null ? INFINITE : (middle - lower) / (middle - fit.quantile(-THREE_SIGMA));
    double up = upper == null ? INFINITE : (upper - middle) / (fit.quantile(THREE_SIGMA) - middle);
    return Math.min(down, up);
  }

  private void index(
      String name, JohnsonFit fit, ToDoubleFunction<JohnsonFit> index, String method) {
    Interval interval =
        shape.values().length < LEAST ? null : FittedInterval.of(shape.values(), fit, index);
    if (interval == null) {
      add(name, index.applyAsDouble(fit), "", method);
    } else {
      figures.add(
          Figures.ranged(
              name,
              interval.value(),
              interval.lower(),
              interval.upper(),
              "",
              method + HOLDS,
              SOURCE_OF_FIT));
    }
  }

  private void nonconforming(JohnsonFit fit, String method) {
    Double lower = plan.limits().lower();
    Double upper = plan.limits().upper();
    if (lower != null) {
      add("expectedBelowPpmFitted", 1e6 * fit.below(lower), "ppm", method);
    }
    if (upper != null) {
      add("expectedAbovePpmFitted", 1e6 * (1 - fit.below(upper)), "ppm", method);
    }
  }

  private void add(String name, double value, String unit, String method) {
    figures.add(Figures.plain(name, value, unit, method, SOURCE_OF_FIT));
  }
}
