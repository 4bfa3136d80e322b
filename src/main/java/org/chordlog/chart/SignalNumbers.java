package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.Signal;

/** The numbers of the run tests that fired, at their points, where there is room. */
record SignalNumbers(List<ChartPoint> points) implements Overlay {
  private static final double GAP_PX = 5;
  private static final float SIZE_PX = 12;

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    pen.setFont(ChartFonts.bold(SIZE_PX));
    pen.setPaint(Ink.SIGNAL.color());
    double free = 0;
    for (ChartPoint point : signalling()) {
      double x = panel.x((double) point.number(), dataArea);
      String text = "T" + PointTargets.tests(point);
      double width = pen.getFontMetrics().stringWidth(text);
      if (x - width / 2 >= free) {
        double y = panel.y(point.value(), dataArea) + (below(point) ? 20 : -11);
        pen.drawString(text, (float) (x - width / 2), (float) y);
        free = x + width / 2 + GAP_PX;
      }
    }
  }

  private List<ChartPoint> signalling() {
    return points.stream().filter(each -> !each.signals().isEmpty() && !each.excluded()).toList();
  }

  private static boolean below(ChartPoint point) {
    return point.signals().get(0).side() == Signal.Side.BELOW;
  }
}
