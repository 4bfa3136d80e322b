package org.chordlog.chart;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;

/** One plot of a picture, what on it can be pointed at, and what is drawn over it. */
record Panel(XYPlot plot, List<Target> targets, List<Overlay> overlays) {
  Panel {
    targets = List.copyOf(targets);
    overlays = List.copyOf(overlays);
  }

  /** The same with something more drawn over it. */
  Panel with(Overlay overlay) {
    List<Overlay> more = new ArrayList<>(overlays);
    more.add(overlay);
    return new Panel(plot, targets, more);
  }

  double x(double along, Rectangle2D dataArea) {
    return plot.getDomainAxis().valueToJava2D(along, dataArea, RectangleEdge.BOTTOM);
  }

  double y(double value, Rectangle2D dataArea) {
    return plot.getRangeAxis().valueToJava2D(value, dataArea, RectangleEdge.LEFT);
  }

  /** The same, at the edge for what would be beyond it. */
  double yInside(double value, Rectangle2D dataArea) {
    return Math.max(dataArea.getMinY(), Math.min(dataArea.getMaxY(), y(value, dataArea)));
  }

  List<PointPlace> places(int panel, Rectangle2D dataArea) {
    return targets.stream()
        .map(
            t ->
                new PointPlace(
                    panel,
                    x(t.along(), dataArea),
                    yInside(t.value(), dataArea),
                    t.label(),
                    t.limits(),
                    t.point()))
        .toList();
  }
}
