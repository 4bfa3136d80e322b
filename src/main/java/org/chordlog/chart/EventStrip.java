package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.verdict.Words;

/** Signs and names of what happened above a panel, or at its foot; a name only where it fits. */
record EventStrip(Sign sign, boolean foot, List<Flag> flags) implements Overlay {
  private static final double AWAY_PX = 9;

  /** Something that happened there. */
  record Flag(double along, String name) {}

  static EventStrip of(List<ChartSnapshot.EventMark> events) {
    return new EventStrip(
        Sign.flag(5),
        false,
        events.stream()
            .map(each -> new Flag(each.beforeNumber() - 0.5, Words.label(each.event().kind())))
            .toList());
  }

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    pen.setFont(ChartFonts.regular(ChartStyle.TEXT_PX));
    sign.hold(pen);
    double y = (foot ? dataArea.getMaxY() : dataArea.getMinY()) - AWAY_PX;
    double free = 0;
    for (int i = 0; i < flags.size(); i++) {
      double x = at(i, panel, dataArea);
      sign.draw(pen, x, y);
      String name = flags.get(i).name();
      double end = x + 9 + pen.getFontMetrics().stringWidth(name) + 8;
      boolean last = i + 1 == flags.size();
      if (x >= free && end < (last ? dataArea.getMaxX() + 60 : at(i + 1, panel, dataArea))) {
        pen.drawString(name, (float) x + 9, (float) y + 4);
        free = end;
      }
    }
  }

  private double at(int i, Panel panel, Rectangle2D dataArea) {
    return panel.x(flags.get(i).along(), dataArea);
  }
}
