package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * Who measured, above where the cells of each begin; turned, and on several rows where many share a
 * narrow picture, so that nobody goes without a name.
 */
record OperatorNames(List<EventStrip.Flag> flags, int cells) implements Overlay {
  private static final double AWAY_PX = 9;
  private static final double GAP_PX = 8;

  /** What axis and margins take of a picture's width, rather more than less. */
  private static final double BESIDE_PX = 90;

  private static final double LONGEST_PX = 110;
  private static final int MOST_ROWS = 3;

  @Override
  public double topPx(double widthPx) {
    double plotPx = widthPx - BESIDE_PX;
    return sideBySide(plotPx) ? 0 : rows(plotPx) * (longestPx() + GAP_PX) + AWAY_PX;
  }

  private boolean sideBySide(double plotPx) {
    for (int i = 0; i < flags.size(); i++) {
      if (AWAY_PX + widthPx(flags.get(i).name()) + GAP_PX > segment(i) * plotPx / cells) {
        return false;
      }
    }
    return true;
  }

  /** Cells of that operator. */
  private double segment(int operator) {
    double end = operator + 1 == flags.size() ? cells - 0.5 : flags.get(operator + 1).along();
    return end - flags.get(operator).along();
  }

  private int rows(double plotPx) {
    double narrow = plotPx / flags.size();
    return (int) Math.min(MOST_ROWS, Math.ceil((ChartStyle.TEXT_PX + 1) / narrow));
  }

  private double longestPx() {
    double longest = flags.stream().mapToDouble(each -> widthPx(each.name())).max().orElse(0);
    return Math.min(LONGEST_PX, longest);
  }

  /** Of the bold letters, so that there is room in any case. */
  private static double widthPx(String name) {
    return ChartFonts.boldWidthPx(name, ChartStyle.TEXT_PX);
  }

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    pen.setFont(ChartFonts.regular(ChartStyle.TEXT_PX));
    Sign post = Sign.post(5);
    post.hold(pen);
    boolean beside = sideBySide(dataArea.getWidth());
    double y = dataArea.getMinY() - AWAY_PX;
    for (int i = 0; i < flags.size(); i++) {
      double x = panel.x(flags.get(i).along(), dataArea);
      post.draw(pen, x, y);
      if (beside) {
        pen.drawString(flags.get(i).name(), (float) (x + AWAY_PX), (float) y + 4);
      } else {
        int row = i % rows(dataArea.getWidth());
        double middle = x + segment(i) * dataArea.getWidth() / cells / 2;
        turned(pen, flags.get(i).name(), middle, y - row * (longestPx() + GAP_PX));
      }
    }
  }

  /** Reads upwards from there. */
  private static void turned(Graphics2D pen, String name, double x, double y) {
    AffineTransform before = pen.getTransform();
    pen.translate(x + ChartStyle.TEXT_PX * 0.36, y + 5);
    pen.rotate(-Math.PI / 2);
    pen.drawString(shortened(name), 0, 0);
    pen.setTransform(before);
  }

  private static String shortened(String name) {
    if (widthPx(name) <= LONGEST_PX) {
      return name;
    }
    int end = name.length();
    while (widthPx(name.substring(0, end) + "…") > LONGEST_PX) {
      end = name.offsetByCodePoints(end, -1);
    }
    return name.substring(0, end).strip() + "…";
  }
}
