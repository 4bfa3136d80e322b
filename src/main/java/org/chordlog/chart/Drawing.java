package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.ui.RectangleInsets;

/** Panels under one another on a shared axis, ready for any pen; used by one thread at a time. */
public final class Drawing {
  private final JFreeChart chart;
  private final List<Panel> panels;
  private final String description;
  private final Layout layout;

  private Drawing(JFreeChart chart, List<Panel> panels, String description, Layout layout) {
    this.chart = chart;
    this.panels = panels;
    this.description = description;
    this.layout = layout;
  }

  static Drawing of(NumberAxis shared, List<Panel> panels, String description, Layout layout) {
    CombinedDomainXYPlot all = new CombinedDomainXYPlot(shared);
    ChartStyle.style(all);
    all.setGap(ChartStyle.TEXT_PX);
    for (int i = 0; i < panels.size(); i++) {
      all.add(panels.get(i).plot(), i == 0 ? 3 : 2);
    }
    JFreeChart chart = new JFreeChart(null, null, all, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    return new Drawing(chart, List.copyOf(panels), description, layout);
  }

  /** Room around the panels in a picture of that width. */
  private RectangleInsets around(double widthPx) {
    double right = layout.rightPx();
    double top = layout.topPx();
    for (Panel panel : panels) {
      for (Overlay overlay : panel.overlays()) {
        right = Math.max(right, overlay.rightPx());
      }
    }
    for (Overlay overlay : panels.get(0).overlays()) {
      top = Math.max(top, overlay.topPx(widthPx - right));
    }
    return new RectangleInsets(top, 4, layout.bottomPx(), right);
  }

  /** What the picture shows, in words. */
  public String description() {
    return description;
  }

  /** How many charts stand under one another. */
  public int panels() {
    return panels.size();
  }

  /** Draws with a pen of that size, px or points, and tells where the points stand. */
  public List<PointPlace> draw(Graphics2D pen, double width, double height) {
    // without an entity collection: areas only, no object a point
    ChartRenderingInfo info = new ChartRenderingInfo(null);
    chart.getPlot().setInsets(around(width));
    chart.draw(pen, new Rectangle2D.Double(0, 0, width, height), null, info);
    List<PointPlace> places = new ArrayList<>();
    for (int i = 0; i < panels.size(); i++) {
      Panel panel = panels.get(i);
      Rectangle2D area = area(info.getPlotInfo(), i);
      panel.overlays().forEach(overlay -> overlay.draw(pen, panel, area));
      places.addAll(panel.places(i, area));
    }
    return places;
  }

  private static Rectangle2D area(PlotRenderingInfo info, int panel) {
    return info.getSubplotInfo(panel).getDataArea();
  }
}
