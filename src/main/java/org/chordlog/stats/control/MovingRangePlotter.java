package org.chordlog.stats.control;

import org.chordlog.stats.math.Factors;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** Moving ranges of two single values. */
final class MovingRangePlotter implements Plotter {
  private double previous = Double.NaN;

  @Override
  public @Nullable Place place(Point point, Estimate estimate) {
    double range = Math.abs(point.mean() - previous);
    if (!point.excluded()) {
      previous = point.mean();
    }
    Factors factors = Factors.of(2);
    double sigma = estimate.sigma();
    return Double.isNaN(range)
        ? null
        : SpreadPlotter.spread(range, factors.d2() * sigma, 3 * factors.d3() * sigma);
  }

  @Override
  public void restart() {
    previous = Double.NaN;
  }

  @Override
  public Plotter copy() {
    MovingRangePlotter copy = new MovingRangePlotter();
    copy.previous = previous;
    return copy;
  }

  @Override
  public void pack(Packer packer) {
    packer.put(previous);
  }

  @Override
  public void unpack(Unpacker from) {
    previous = from.aDouble();
  }
}
