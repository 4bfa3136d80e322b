package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Tabular CUSUM in standard deviations of a point (ISO 7870-4; head start after Lucas and Crosier
 * 1982): C⁺ = max(0, C⁺ + z − k), C⁻ = max(0, C⁻ − z − k), drawn as C⁺ above and −C⁻ below zero.
 */
final class CusumPlotter implements Plotter {
  private final StatisticsPlan plan;
  private final ChartSettings.Cusum settings;
  private double above;
  private double below;

  CusumPlotter(StatisticsPlan plan) {
    this.plan = plan;
    settings = plan.charts().cusum();
    restart();
  }

  @Override
  public Place place(Point point, Estimate estimate) {
    if (!point.excluded()) {
      double z = z(point, estimate);
      above = Math.max(0, above + z - settings.reference());
      below = Math.max(0, below - z - settings.reference());
    }
    double interval = settings.decisionInterval();
    double z = Place.standardise(above >= below ? above : -below, interval);
    return new Place(above, 0.0 - below, 0, -interval, interval, z);
  }

  private double z(Point point, Estimate estimate) {
    double distance = point.mean() - plan.aim(estimate);
    return estimate.sigma() > 0 ? distance * Math.sqrt(point.size()) / estimate.sigma() : 0;
  }

  @Override
  public void restart() {
    above = settings.headStart() * settings.decisionInterval();
    below = above;
  }

  @Override
  public Plotter copy() {
    CusumPlotter copy = new CusumPlotter(plan);
    copy.above = above;
    copy.below = below;
    return copy;
  }

  @Override
  public void pack(Packer packer) {
    packer.put(above).put(below);
  }

  @Override
  public void unpack(Unpacker from) {
    above = from.aDouble();
    below = from.aDouble();
  }
}
