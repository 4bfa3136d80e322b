package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;

/** Labels so far right of a panel at their values, moved apart where they would overlap. */
record SideLabels(List<Label> labels, double awayPx) implements Overlay {
  private static final double APART_PX = ChartStyle.TEXT_PX + 3;
  private static final double GAP_PX = 8;

  /** A viewer without the bundled font may show a wider one. */
  private static final double SPARE = 1.12;

  /** A text at a value. */
  record Label(double value, String text, Ink ink) {}

  SideLabels(List<Label> labels) {
    this(labels, 0);
  }

  SideLabels {
    labels = labels.stream().sorted(Comparator.comparingDouble(Label::value).reversed()).toList();
  }

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    double[] y = labels.stream().mapToDouble(label -> inside(panel, dataArea, label)).toArray();
    spread(y, dataArea.getMaxY());
    pen.setFont(ChartFonts.bold(ChartStyle.TEXT_PX));
    for (int i = 0; i < y.length; i++) {
      pen.setPaint(labels.get(i).ink().color());
      float x = (float) (dataArea.getMaxX() + awayPx + GAP_PX);
      pen.drawString(labels.get(i).text(), x, (float) (y[i] + ChartStyle.TEXT_PX * 0.36));
    }
  }

  @Override
  public double rightPx() {
    return labels.stream()
        .mapToDouble(label -> ChartFonts.boldWidthPx(label.text(), ChartStyle.TEXT_PX))
        .map(width -> awayPx + GAP_PX + SPARE * width)
        .max()
        .orElse(0);
  }

  private static double inside(Panel panel, Rectangle2D area, Label label) {
    return Math.max(area.getMinY(), Math.min(area.getMaxY(), panel.y(label.value(), area)));
  }

  /** Moves each below the one above it, then all back up that fell off the end. */
  static void spread(double[] y, double bottom) {
    for (int i = 1; i < y.length; i++) {
      y[i] = Math.max(y[i], y[i - 1] + APART_PX);
    }
    double limit = bottom;
    for (int i = y.length - 1; i >= 0 && y[i] > limit; i--) {
      y[i] = limit;
      limit -= APART_PX;
    }
  }
}
