package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** What the points of a run did, at the foot of its band, where there is room. */
record RunWords(List<Run> runs) implements Overlay {
  private static final double GAP_PX = 8;
  private static final double UP_PX = 5;

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    pen.setFont(ChartFonts.bold(ChartStyle.TEXT_PX));
    pen.setPaint(Ink.SIGNAL.color());
    double free = dataArea.getMinX();
    for (Run run : runs) {
      String words = run.words();
      double width = pen.getFontMetrics().stringWidth(words);
      double middle = panel.x((run.from() + run.to()) / 2.0, dataArea);
      double from = Math.max(free, Math.min(middle - width / 2, dataArea.getMaxX() - width));
      boolean near = Math.abs(from + width / 2 - middle) <= width / 2 + GAP_PX;
      if (near && from + width <= dataArea.getMaxX() + 1) {
        pen.drawString(words, (float) from, (float) (dataArea.getMaxY() - UP_PX));
        free = from + width + GAP_PX;
      }
    }
  }
}
