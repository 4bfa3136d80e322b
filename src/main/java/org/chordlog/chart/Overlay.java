package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/** Something drawn beside or above a panel once its place is known. */
interface Overlay {
  /** Room needed right of the panel, px. */
  default double rightPx() {
    return 0;
  }

  /** Room needed above the panel in a picture of that width, px. */
  default double topPx(double widthPx) {
    return 0;
  }

  void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea);
}
