package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * What the signs mean, right of the shared axis' name, and left of it as well where there is not
 * room for all on one side; left out where there is none.
 */
record Legend(List<Entry> entries) implements Overlay {
  private static final double DOWN_PX = 43;
  private static final double SIGN_PX = 18;
  private static final double GAP_PX = 16;

  /** Half of what the axis' name takes. */
  private static final double NAME_PX = 80;

  private static final float SIZE_PX = ChartStyle.TEXT_PX;

  /** Draws a sign at a place. */
  interface Sample {
    void draw(Graphics2D pen, double x, double y);
  }

  /** A sign and its meaning. */
  record Entry(Sample sample, String text) {
    static Entry of(Sign sign, String text) {
      return new Entry(
          (pen, x, y) -> {
            sign.hold(pen);
            sign.draw(pen, x, y);
          },
          text);
    }

    static Entry line(Ink ink, Stroke stroke, String text) {
      return new Entry(
          (pen, x, y) -> {
            pen.setPaint(ink.color());
            pen.setStroke(stroke);
            pen.draw(new Line2D.Double(x - 11, y, x + 5, y));
          },
          text);
    }
  }

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    pen.setFont(ChartFonts.regular(SIZE_PX));
    double room = dataArea.getWidth() / 2 - NAME_PX;
    int right = entries.size();
    while (right > 0
        && widthPx(pen, entries.subList(entries.size() - right, entries.size())) > room) {
      right--;
    }
    List<Entry> left = entries.subList(0, entries.size() - right);
    if (widthPx(pen, left) <= room) {
      double y = dataArea.getMaxY() + DOWN_PX;
      List<Entry> rest = entries.subList(left.size(), entries.size());
      draw(pen, left, dataArea.getMinX() + SIGN_PX / 2, y);
      draw(pen, rest, dataArea.getMaxX() - widthPx(pen, rest), y);
    }
  }

  private static double widthPx(Graphics2D pen, List<Entry> some) {
    double each =
        some.stream()
            .mapToDouble(e -> SIGN_PX + pen.getFontMetrics().stringWidth(e.text()) + GAP_PX)
            .sum();
    return each - GAP_PX;
  }

  private static void draw(Graphics2D pen, List<Entry> some, double left, double y) {
    double x = left;
    for (Entry entry : some) {
      entry.sample().draw(pen, x + 4, y - SIZE_PX * 0.36);
      pen.setPaint(Ink.SOFT.color());
      pen.drawString(entry.text(), (float) (x + SIGN_PX), (float) y);
      x += SIGN_PX + pen.getFontMetrics().stringWidth(entry.text()) + GAP_PX;
    }
  }
}
