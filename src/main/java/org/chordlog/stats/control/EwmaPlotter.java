package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Exponentially weighted moving average (Roberts 1959; Lucas and Saccucci 1990): zᵢ = λx̄ᵢ + (1 −
 * λ)zᵢ₋₁ with limits ± Lσ√w, w exact by its recursion or asymptotic λ/((2 − λ)n).
 */
final class EwmaPlotter implements Plotter {
  private final StatisticsPlan plan;
  private final ChartSettings.Ewma settings;
  private double average = Double.NaN;
  private double weight;

  EwmaPlotter(StatisticsPlan plan) {
    this.plan = plan;
    settings = plan.charts().ewma();
  }

  @Override
  public Place place(Point point, Estimate estimate) {
    double aim = plan.aim(estimate);
    double before = Double.isNaN(average) ? aim : average;
    if (!point.excluded()) {
      double lambda = settings.lambda();
      weight = first(point) + (1 - lambda) * (1 - lambda) * weight;
      average = before + lambda * (point.mean() - before);
    }
    double value = Double.isNaN(average) ? before : average;
    return Place.level(value, aim, settings.width() * estimate.sigma() * Math.sqrt(weight(point)));
  }

  /** One that is excluded before any other has the limits that the first would have. */
  private double weight(Point point) {
    if (settings.asymptotic()) {
      return settings.lambda() / (2 - settings.lambda()) / point.size();
    }
    return weight > 0 ? weight : first(point);
  }

  private double first(Point point) {
    return settings.lambda() * settings.lambda() / point.size();
  }

  @Override
  public void restart() {
    average = Double.NaN;
    weight = 0;
  }

  @Override
  public Plotter copy() {
    EwmaPlotter copy = new EwmaPlotter(plan);
    copy.average = average;
    copy.weight = weight;
    return copy;
  }

  @Override
  public void pack(Packer packer) {
    packer.put(average).put(weight);
  }

  @Override
  public void unpack(Unpacker from) {
    average = from.aDouble();
    weight = from.aDouble();
  }
}
