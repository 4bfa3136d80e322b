package org.chordlog.chart;

/** Room around the panels, px. */
record Layout(double topPx, double bottomPx, double rightPx) {
  static final Layout USUAL =
      new Layout(ChartStyle.TOP_MARGIN_PX, ChartStyle.BOTTOM_MARGIN_PX, ChartStyle.RIGHT_MARGIN_PX);
}
