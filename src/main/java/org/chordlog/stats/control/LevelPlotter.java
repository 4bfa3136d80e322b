package org.chordlog.stats.control;

/** Individuals or means: centre ± 3σ/√n (ISO 7870-2). */
final class LevelPlotter extends Plotter.Memoryless {
  @Override
  public Place place(Point point, Estimate estimate) {
    double half = 3 * estimate.sigma() / Math.sqrt(point.size());
    return Place.level(point.mean(), estimate.mean(), half);
  }
}
