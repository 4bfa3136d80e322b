package org.chordlog.chart;

import java.util.List;
import org.jfree.chart.annotations.XYPolygonAnnotation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/** Where it is along, and the ends of its band. */
record Band(double along, double low, double high) {
  /**
   * Fills what is between the ends, from the first to the last; two or more. The plot must have a
   * first layer already. Cut off at the ends of the scale: nothing is drawn outside its panel.
   */
  static void fill(XYPlot plot, List<Band> bands, ValueScale scale) {
    double[] outline = new double[4 * bands.size()];
    for (int i = 0; i < bands.size(); i++) {
      Band band = bands.get(i);
      outline[2 * i] = band.along();
      outline[2 * i + 1] = scale.inside(band.low());
      outline[outline.length - 2 * i - 2] = band.along();
      outline[outline.length - 2 * i - 1] = scale.inside(band.high());
    }
    if (bands.size() > 1) {
      plot.getRenderer(0)
          .addAnnotation(
              new XYPolygonAnnotation(outline, null, null, Ink.BAND.tint()), Layer.BACKGROUND);
    }
  }
}
