package org.chordlog.chart;

import java.awt.Stroke;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYDataset;

/** Adds lines to a plot, the later above the earlier. */
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

  private void add(XYDataset data, XYLineAndShapeRenderer renderer, Ink ink) {
    renderer.setDefaultPaint(ink.color());
    renderer.setAutoPopulateSeriesPaint(false);
    renderer.setDefaultCreateEntities(false);
    int next = plot.getDataset(0) == null ? 0 : plot.getDatasetCount();
    plot.setDataset(next, data);
    plot.setRenderer(next, renderer);
  }
}
