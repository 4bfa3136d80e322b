package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;

/** Labels above a panel at their values, on a second row where they would overlap. */
record TopLabels(List<SideLabels.Label> labels) implements Overlay {
  private static final double[] ROWS_UP_PX = {7, 24};

  TopLabels {
    labels = labels.stream().sorted(Comparator.comparingDouble(SideLabels.Label::value)).toList();
  }

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    pen.setFont(ChartFonts.bold(ChartStyle.TEXT_PX));
    double[] free = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (SideLabels.Label label : labels) {
      double half = pen.getFontMetrics().stringWidth(label.text()) / 2.0;
      double x = panel.x(label.value(), dataArea);
      int row = x - half >= free[0] || free[0] <= free[1] ? 0 : 1;
      double from = Math.max(x - half, free[row]);
      pen.setPaint(label.ink().color());
      pen.drawString(label.text(), (float) from, (float) (dataArea.getMinY() - ROWS_UP_PX[row]));
      free[row] = from + 2 * half + 8;
    }
  }
}
