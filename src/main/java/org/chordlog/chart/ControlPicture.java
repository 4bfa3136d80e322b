package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;

/** Control charts of the same points, one or two, on a shared number axis. */
final class ControlPicture {
  private static final int LEAST_WIDTH = 10;
  private static final Set<ChartKind> AT_EDGE = Set.of(ChartKind.INDIVIDUALS, ChartKind.MEAN);

  private ControlPicture() {}

  /** The upper chart first; throws {@link BadInput} without any. */
  static Drawing of(List<ChartSnapshot> charts) {
    return of(charts, Optional.empty());
  }

  /** The same with a distribution at the edge of the upper one, where that shows its values. */
  static Drawing of(List<ChartSnapshot> asKept, Optional<DistributionSnapshot> distribution) {
    if (asKept.isEmpty()) {
      throw new BadInput("charts", asKept, "is empty", "one chart or more");
    }
    List<ChartSnapshot> charts = asKept.stream().map(ChartSnapshot::evenly).toList();
    Optional<DistributionSnapshot> edge =
        distribution.filter(values -> suits(values, charts.get(0)));
    double awayPx = edge.isPresent() ? EdgeBars.ROOM_PX : 0;
    List<Panel> panels = new ArrayList<>();
    for (ChartSnapshot chart : charts) {
      panels.add(ControlPanel.of(chart, awayPx, panels.isEmpty() ? edge.orElse(null) : null));
    }
    panels.set(0, panels.get(0).with(EventStrip.of(charts.get(0).events())));
    int last = panels.size() - 1;
    panels.set(last, panels.get(last).with(new Legend(legend(charts))));
    List<ChartPoint> points = charts.get(0).points();
    double first = points.isEmpty() ? 1 : points.get(0).number();
    double end = points.isEmpty() ? 1 : points.get(points.size() - 1).number();
    double right = Math.max(end, first + LEAST_WIDTH - 1);
    String counted = ChartWords.counted(charts.get(0));
    return Drawing.of(
        ChartStyle.countAxis(counted, first - 0.5, right + 0.5),
        panels,
        Described.of(charts),
        Layout.USUAL);
  }

  private static boolean suits(DistributionSnapshot values, ChartSnapshot chart) {
    return AT_EDGE.contains(chart.kind())
        && values.count() > 0
        && values.unit().equals(chart.unit());
  }

  /** Only the signs that are there. */
  private static List<Legend.Entry> legend(List<ChartSnapshot> charts) {
    List<Legend.Entry> entries = new ArrayList<>();
    if (any(charts, ChartPoint::signalling)) {
      entries.add(Legend.Entry.of(Sign.diamond(6), "breaks a rule"));
    }
    if (any(charts, ChartPoint::excluded)) {
      entries.add(Legend.Entry.of(Sign.cross(5), "excluded"));
    }
    return entries;
  }

  private static boolean any(List<ChartSnapshot> charts, Predicate<ChartPoint> what) {
    return charts.stream().flatMap(chart -> chart.points().stream()).anyMatch(what);
  }
}
