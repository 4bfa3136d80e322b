package org.chordlog.chart;

import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * What the points of a run did, at the foot of its band, where there is room; on paper of its own,
 * since a specification limit may pass there.
 */
record RunWords(List<Run> runs) implements Overlay {
  private static final double GAP_PX = 8;
  private static final double UP_PX = 5;
  private static final double EDGE_PX = 3;

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    pen.setFont(ChartFonts.bold(ChartStyle.TEXT_PX));
    double free = dataArea.getMinX();
    for (Run run : runs) {
      String words = run.words();
      double width = pen.getFontMetrics().stringWidth(words);
      double middle = panel.x((run.from() + run.to()) / 2.0, dataArea);
      double from = Math.max(free, Math.min(middle - width / 2, dataArea.getMaxX() - width));
      boolean near = Math.abs(from + width / 2 - middle) <= width / 2 + GAP_PX;
      if (near && from + width <= dataArea.getMaxX() + 1) {
        draw(pen, words, from, dataArea.getMaxY() - UP_PX);
        free = from + width + GAP_PX;
      }
    }
  }

  private static void draw(Graphics2D pen, String words, double left, double base) {
    FontMetrics metrics = pen.getFontMetrics();
    double width = metrics.stringWidth(words) + 2 * EDGE_PX;
    double top = base - metrics.getAscent();
    pen.setPaint(Ink.PAPER.color());
    pen.fill(new Rectangle2D.Double(left - EDGE_PX, top, width, metrics.getAscent() + EDGE_PX));
    pen.setPaint(Ink.SIGNAL.color());
    pen.drawString(words, (float) left, (float) base);
  }
}
