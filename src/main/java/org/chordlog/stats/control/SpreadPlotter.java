package org.chordlog.stats.control;

import java.util.function.ToDoubleFunction;
import org.chordlog.stats.math.Factors;
import org.jspecify.annotations.Nullable;

/** Ranges or standard deviations: centre d2σ or c4σ, ± 3 of their own sigma, not below zero. */
final class SpreadPlotter extends Plotter.Memoryless {
  private final ToDoubleFunction<Point> value;
  private final ToDoubleFunction<Factors> expected;
  private final ToDoubleFunction<Factors> deviation;

  private SpreadPlotter(
      ToDoubleFunction<Point> value,
      ToDoubleFunction<Factors> expected,
      ToDoubleFunction<Factors> deviation) {
    this.value = value;
    this.expected = expected;
    this.deviation = deviation;
  }

  static SpreadPlotter range() {
    return new SpreadPlotter(Point::range, Factors::d2, Factors::d3);
  }

  static SpreadPlotter deviation() {
    return new SpreadPlotter(Point::deviation, Factors::c4, Factors::c5);
  }

  @Override
  public @Nullable Place place(Point point, Estimate estimate) {
    if (point.size() < Factors.LEAST) {
      return null;
    }
    Factors factors = Factors.of(point.size());
    double centre = expected.applyAsDouble(factors) * estimate.sigma();
    double half = 3 * deviation.applyAsDouble(factors) * estimate.sigma();
    return spread(value.applyAsDouble(point), centre, half);
  }

  static Place spread(double value, double centre, double half) {
    double z = Place.standardise(value - centre, half);
    return new Place(value, null, centre, Math.max(0, centre - half), centre + half, z);
  }
}
