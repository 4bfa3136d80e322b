package org.chordlog.chart;

import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.chordlog.stats.drift.DriftSnapshot;

/** A dot at each job's deviation on a line for its interval. */
record JobSigns(List<DriftSnapshot.BlockMean> jobs) implements Overlay {
  @Override
  public void draw(Graphics2D pen, Panel panel, Rectangle2D dataArea) {
    Sign dot = Sign.dot(jobs.size() > 150 ? 2.5 : 5);
    dot.hold(pen);
    pen.setStroke(ChartStyle.SOLID);
    for (DriftSnapshot.BlockMean job : jobs) {
      double x = panel.x(job.pieces(), dataArea);
      Double lower = job.lower();
      Double upper = job.upper();
      if (lower != null && upper != null) {
        pen.draw(new Line2D.Double(x, panel.y(lower, dataArea), x, panel.y(upper, dataArea)));
      }
      dot.draw(pen, x, panel.y(job.deviation(), dataArea));
    }
  }
}
