package org.chordlog.chart;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.chordlog.stats.PositionsSnapshot;

/** A thin line from least to most, a thick one for the mean's interval, a dot for the mean. */
record PositionSigns(List<PositionsSnapshot.Row> rows) implements Overlay {
  private static final Stroke THICK =
      new BasicStroke(20, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);
  private static final double TICK_PX = 9;

  static List<Legend.Entry> legend() {
    return List.of(
        Legend.Entry.of(Sign.dot(5), "mean"),
        Legend.Entry.line(Ink.BAR, THICK, "its 95 % interval"),
        Legend.Entry.line(Ink.POINT, ChartStyle.SOLID, "least to most"));
  }

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).count() > 0) {
        draw(pen, rows.get(i), panel.x(i, dataArea), v -> panel.y(v, dataArea));
      }
    }
  }

  private static void draw(
      Graphics2D pen,
      PositionsSnapshot.Row row,
      double x,
      java.util.function.DoubleUnaryOperator y) {
    double least = y.applyAsDouble(row.least());
    double most = y.applyAsDouble(row.most());
    Double lower = row.meanLower();
    Double upper = row.meanUpper();
    if (lower != null && upper != null) {
      pen.setPaint(Ink.BAR.color());
      pen.setStroke(THICK);
      pen.draw(new Line2D.Double(x, y.applyAsDouble(lower), x, y.applyAsDouble(upper)));
    }
    pen.setPaint(Ink.POINT.color());
    pen.setStroke(ChartStyle.SOLID);
    pen.draw(new Line2D.Double(x, least, x, most));
    pen.draw(new Line2D.Double(x - TICK_PX, least, x + TICK_PX, least));
    pen.draw(new Line2D.Double(x - TICK_PX, most, x + TICK_PX, most));
    Sign mean = Sign.dot(5);
    mean.hold(pen);
    mean.draw(pen, x, y.applyAsDouble(row.mean()));
  }
}
