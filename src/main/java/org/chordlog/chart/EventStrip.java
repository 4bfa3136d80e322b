package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.chordlog.stats.ChartSnapshot;

/** Flags and names of the events above the upper panel; a name only where there is room. */
record EventStrip(List<ChartSnapshot.EventMark> events) implements Overlay {
  private static final double UP_PX = 9;

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    pen.setFont(ChartFonts.regular(ChartStyle.TEXT_PX - 1));
    Sign flag = Sign.flag(5);
    flag.hold(pen);
    double free = 0;
    for (int i = 0; i < events.size(); i++) {
      double x = at(i, panel, dataArea);
      double y = dataArea.getMinY() - UP_PX;
      flag.draw(pen, x, y);
      String name = Words.of(events.get(i).event().kind());
      double end = x + 9 + pen.getFontMetrics().stringWidth(name) + 8;
      boolean room = i + 1 == events.size() || end < at(i + 1, panel, dataArea);
      if (room && x >= free) {
        pen.drawString(name, (float) x + 9, (float) y + 4);
        free = end;
      }
    }
  }

  private double at(int i, Panel panel, Rectangle2D dataArea) {
    return panel.x(events.get(i).beforeNumber() - 0.5, dataArea);
  }
}
