package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/** Something drawn beside or above a panel once its place is known. */
interface Overlay {
  void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea);
}
