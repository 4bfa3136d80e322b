package org.chordlog.chart;

import java.awt.BasicStroke;
import java.awt.Stroke;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** The one style of all charts: fonts, strokes, signs, axes. */
final class ChartStyle {
  static final float TEXT_PX = 14;
  static final double RIGHT_MARGIN_PX = 104;
  static final double TOP_MARGIN_PX = 26;
  static final double BOTTOM_MARGIN_PX = 8;

  static final Stroke HAIR = new BasicStroke(1);
  static final Stroke SOLID = new BasicStroke(1.6f);
  static final Stroke BOLD = new BasicStroke(2.2f);
  static final Stroke DASHED = dashes(9, 5);
  static final Stroke DASH_DOT = dashes(14, 4, 2, 4);
  static final Stroke DOTTED = dashes(2, 4);

  private ChartStyle() {}

  static NumberAxis valueAxis(String label, ValueScale scale) {
    NumberAxis axis = axis(label, scale.low(), scale.high());
    axis.setAutoRangeIncludesZero(false);
    return axis;
  }

  static NumberAxis axis(String label, double low, double high) {
    NumberAxis axis = new NumberAxis(label.isEmpty() ? null : label);
    axis.setRange(low, high);
    axis.setStandardTickUnits(Ticks.values());
    style(axis);
    return axis;
  }

  static NumberAxis countAxis(String label, double low, double high) {
    NumberAxis axis = axis(label, low, high);
    axis.setStandardTickUnits(Ticks.counts());
    return axis;
  }

  static void style(ValueAxis axis) {
    axis.setLabelFont(ChartFonts.bold(TEXT_PX));
    axis.setTickLabelFont(ChartFonts.regular(TEXT_PX));
    axis.setTickLabelInsets(new RectangleInsets(6, 4, 6, 4));
    axis.setLabelPaint(Ink.TEXT.color());
    axis.setTickLabelPaint(Ink.SOFT.color());
    axis.setAxisLinePaint(Ink.SOFT.color());
    axis.setTickMarkPaint(Ink.SOFT.color());
  }

  /** No background: the page's paper shows through. */
  static void style(Plot plot) {
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setNoDataMessageFont(ChartFonts.regular(TEXT_PX + 4));
    plot.setNoDataMessagePaint(Ink.SOFT.color());
    if (plot instanceof XYPlot xy) {
      xy.setDomainGridlinesVisible(false);
      xy.setRangeGridlinePaint(Ink.GRID.color());
      xy.setRangeGridlineStroke(HAIR);
      xy.setAxisOffset(RectangleInsets.ZERO_INSETS);
    }
  }

  private static Stroke dashes(float... lengths) {
    return new BasicStroke(1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, lengths, 0);
  }
}
