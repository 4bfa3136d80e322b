package org.chordlog.chart;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.chordlog.stats.ChartPoint;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;

/** One plot of a picture, the points whose places are told, and what is drawn over it. */
record Panel(XYPlot plot, List<ChartPoint> points, List<Overlay> overlays) {
  Panel {
    points = List.copyOf(points);
    overlays = List.copyOf(overlays);
  }

  double x(double value, Rectangle2D dataArea) {
    return plot.getDomainAxis().valueToJava2D(value, dataArea, RectangleEdge.BOTTOM);
  }

  double y(double value, Rectangle2D dataArea) {
    return plot.getRangeAxis().valueToJava2D(value, dataArea, RectangleEdge.LEFT);
  }

  List<PointPlace> places(int panel, Rectangle2D dataArea) {
    return points.stream()
        .map(
            p -> new PointPlace(panel, x((double) p.number(), dataArea), y(p.value(), dataArea), p))
        .toList();
  }
}
