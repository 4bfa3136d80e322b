package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import org.chordlog.stats.control.ChartPoint;

/** A larger sign at the newest point that counts. */
record NewestSign(List<ChartPoint> points) implements Overlay {
  private static final double RADIUS_PX = 6;

  static Optional<ChartPoint> newest(List<ChartPoint> points) {
    return points.stream().filter(p -> !p.excluded()).reduce((older, newer) -> newer);
  }

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    newest(points)
        .ifPresent(
            p -> {
              Sign sign = p.signalling() ? Sign.diamond(RADIUS_PX + 3) : Sign.dot(RADIUS_PX);
              sign.hold(pen);
              sign.draw(pen, panel.x((double) p.number(), dataArea), panel.y(p.value(), dataArea));
            });
  }
}
