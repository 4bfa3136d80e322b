package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;

/** A sign of the charts: told apart by its shape first, then by its colour. */
final class Sign {
  private final Ink ink;
  private final boolean filled;
  private final Stroke stroke;
  private final Form form;

  /** The shape around a place. */
  private interface Form {
    Shape at(double x, double y);
  }

  private Sign(Ink ink, boolean filled, Stroke stroke, Form form) {
    this.ink = ink;
    this.filled = filled;
    this.stroke = stroke;
    this.form = form;
  }

  static Sign dot(double radius) {
    return new Sign(
        Ink.POINT,
        true,
        ChartStyle.HAIR,
        (x, y) -> new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
  }

  static Sign diamond(double radius) {
    return new Sign(
        Ink.SIGNAL,
        true,
        ChartStyle.HAIR,
        (x, y) -> closed(x, y - radius, x + radius, y, x, y + radius, x - radius, y));
  }

  /** An open cross for what does not count. */
  static Sign cross(double r) {
    return new Sign(Ink.EXCLUDED, false, ChartStyle.BOLD, (x, y) -> cross(x, y, r));
  }

  static Sign flag(double r) {
    return new Sign(
        Ink.EVENT, true, ChartStyle.HAIR, (x, y) -> closed(x - r, y - r, x + r, y - r, x, y + r));
  }

  /** What goes on beyond the top. */
  static Sign arrowUp(double r) {
    return new Sign(
        Ink.TEXT, true, ChartStyle.HAIR, (x, y) -> closed(x - r, y + r, x + r, y + r, x, y - r));
  }

  /** A post on which a name hangs. */
  static Sign post(double r) {
    return new Sign(
        Ink.SOFT,
        true,
        ChartStyle.HAIR,
        (x, y) -> closed(x - r / 2, y - r, x + r / 2, y - r, x + r / 2, y + r, x - r / 2, y + r));
  }

  /** Takes up the sign's colour and stroke. */
  void hold(Graphics2D pen) {
    pen.setPaint(ink.color());
    pen.setStroke(stroke);
  }

  void draw(Graphics2D pen, double x, double y) {
    if (filled) {
      pen.fill(form.at(x, y));
    } else {
      pen.draw(form.at(x, y));
    }
  }

  private static Shape closed(double... xy) {
    Path2D path = new Path2D.Double();
    path.moveTo(xy[0], xy[1]);
    for (int i = 2; i < xy.length; i += 2) {
      path.lineTo(xy[i], xy[i + 1]);
    }
    path.closePath();
    return path;
  }

  private static Shape cross(double x, double y, double r) {
    Path2D path = new Path2D.Double();
    path.moveTo(x - r, y - r);
    path.lineTo(x + r, y + r);
    path.moveTo(x - r, y + r);
    path.lineTo(x + r, y - r);
    return path;
  }
}
