package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.ChartPoint;
import org.chordlog.stats.ChartSnapshot;

/** Control charts of the same points, one or two, on a shared number axis. */
public final class ControlPicture {
  private static final int LEAST_WIDTH = 10;

  private ControlPicture() {}

  /** The upper chart first; throws {@link BadInput} without any. */
  public static Drawing of(List<ChartSnapshot> charts) {
    if (charts.isEmpty()) {
      throw new BadInput("charts", charts, "is empty", "one chart or more");
    }
    List<Panel> panels = new ArrayList<>(charts.stream().map(ControlPanel::of).toList());
    panels.set(0, withEvents(panels.get(0), charts.get(0)));
    List<ChartPoint> points = charts.get(0).points();
    double first = points.isEmpty() ? 1 : points.get(0).number();
    double last = points.isEmpty() ? 1 : points.get(points.size() - 1).number();
    double end = Math.max(last, first + LEAST_WIDTH - 1);
    String counted = Words.counted(charts.get(0).kind());
    return Drawing.of(
        ChartStyle.countAxis(counted, first - 0.5, end + 0.5), panels, Described.of(charts));
  }

  private static Panel withEvents(Panel panel, ChartSnapshot chart) {
    List<Overlay> overlays = new ArrayList<>(panel.overlays());
    overlays.add(new EventStrip(chart.events()));
    return new Panel(panel.plot(), panel.points(), overlays);
  }
}
