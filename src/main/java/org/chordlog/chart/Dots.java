package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** Single values, each with its sign; dots are smaller where there are many. */
record Dots(List<Dot> dots, Sign sign) implements Overlay {
  private static final int MANY = 150;

  /** A value. */
  record Dot(double along, double value) {}

  Dots(List<Dot> dots) {
    this(dots, Sign.dot(dots.size() > MANY ? 2.5 : 4));
  }

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    sign.hold(pen);
    for (Dot dot : dots) {
      sign.draw(pen, panel.x(dot.along(), dataArea), panel.y(dot.value(), dataArea));
    }
  }
}
