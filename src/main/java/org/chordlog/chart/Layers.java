package org.chordlog.chart;

import java.awt.Stroke;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYDataset;

/** Adds lines and bars to a plot, the later above the earlier. */
final class Layers {
  private final XYPlot plot;

  Layers(XYPlot plot) {
    this.plot = plot;
    plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
  }

  void line(XYDataset data, Ink ink, Stroke stroke) {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setDrawSeriesLineAsPath(true);
    renderer.setDefaultStroke(stroke);
    renderer.setAutoPopulateSeriesStroke(false);
    add(data, renderer, ink);
  }

  void bars(XYDataset data, Ink ink) {
    XYBarRenderer renderer = new XYBarRenderer(0.06);
    renderer.setBarPainter(new StandardXYBarPainter());
    renderer.setShadowVisible(false);
    renderer.setDrawBarOutline(false);
    add(data, renderer, ink);
  }

  private void add(XYDataset data, AbstractXYItemRenderer renderer, Ink ink) {
    renderer.setDefaultPaint(ink.color());
    renderer.setAutoPopulateSeriesPaint(false);
    renderer.setDefaultCreateEntities(false);
    int next = plot.getDataset(0) == null ? 0 : plot.getDatasetCount();
    plot.setDataset(next, data);
    plot.setRenderer(next, renderer);
  }
}
