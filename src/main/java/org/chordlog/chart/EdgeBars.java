package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.chordlog.stats.capability.DistributionSnapshot;

/** The distribution of the readings at the right edge of a panel, on its value axis. */
record EdgeBars(DistributionSnapshot values) implements Overlay {
  /** Room that it takes between the panel and its labels, px. */
  static final double ROOM_PX = 108;

  private static final double LONGEST_PX = 94;
  private static final double GAP_PX = 8;

  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    double perCount = LONGEST_PX / highest();
    double left = dataArea.getMaxX() + GAP_PX;
    for (DistributionSnapshot.Bin bin : values.bins()) {
      double top = inside(panel.y(bin.high(), dataArea), dataArea);
      double bottom = inside(panel.y(bin.low(), dataArea), dataArea);
      pen.setPaint((Bars.beyond(values, bin) ? Ink.SIGNAL : Ink.BAR).color());
      pen.fill(
          new Rectangle2D.Double(
              left, top + 0.5, (double) bin.count() * perCount, Math.max(0, bottom - top - 1)));
    }
    curve(pen, panel, dataArea, left, perCount);
  }

  /** The fitted curve that the indices rest on. */
  private void curve(
      Graphics2D pen, Panel panel, Rectangle2D area, double left, double pxPerCount) {
    if (values.curves().isEmpty()) {
      return;
    }
    double perDensity = Bars.countPerDensity(values) * pxPerCount;
    Path2D path = new Path2D.Double();
    for (DistributionSnapshot.Density at : values.curves().get(0).densities()) {
      double y = panel.y(at.value(), area);
      double x = left + at.density() * perDensity;
      if (y < area.getMinY() || y > area.getMaxY()) {
        continue;
      }
      if (path.getCurrentPoint() == null) {
        path.moveTo(x, y);
      } else {
        path.lineTo(x, y);
      }
    }
    pen.setPaint(Ink.POINT.color());
    pen.setStroke(ChartStyle.SOLID);
    pen.draw(path);
  }

  private double highest() {
    double most = values.bins().stream().mapToDouble(bin -> (double) bin.count()).max().orElse(1);
    double peak =
        values.curves().stream()
            .limit(1)
            .flatMap(curve -> curve.densities().stream())
            .mapToDouble(at -> at.density() * Bars.countPerDensity(values))
            .max()
            .orElse(0);
    return Math.max(1, Math.max(most, peak));
  }

  private static double inside(double y, Rectangle2D area) {
    return Math.max(area.getMinY(), Math.min(area.getMaxY(), y));
  }
}
