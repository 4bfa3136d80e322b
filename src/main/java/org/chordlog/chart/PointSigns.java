package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.Predicate;
import org.chordlog.stats.control.ChartPoint;

/** A sign at each point: a dot, a diamond where a run test fired, an open cross where excluded. */
record PointSigns(List<ChartPoint> points) implements Overlay {
  private static final int SMALL_ABOVE = 150;
  private static final int NO_DOTS_ABOVE = 400;

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    boolean small = points.size() > SMALL_ABOVE;
    if (points.size() <= NO_DOTS_ABOVE) {
      Sign dot = Sign.dot(small ? 2.5 : 3.5);
      draw(pen, panel, dataArea, dot, p -> !p.excluded() && p.signals().isEmpty());
    }
    draw(pen, panel, dataArea, Sign.cross(small ? 4 : 5), ChartPoint::excluded);
    draw(pen, panel, dataArea, Sign.diamond(small ? 5 : 7.5), ChartPoint::signalling);
  }

  private void draw(
      Graphics2D pen, Panel panel, Rectangle2D area, Sign sign, Predicate<ChartPoint> chosen) {
    sign.hold(pen);
    points.stream()
        .filter(chosen)
        .forEach(
            p ->
                sign.draw(pen, panel.x((double) p.number(), area), panel.yInside(p.value(), area)));
  }
}
