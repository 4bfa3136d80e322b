package org.chordlog.chart;

import java.util.List;
import java.util.Objects;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Signal;

/** The lines of points on one panel: one, or the upper and the lower sums of a CUSUM. */
final class PointLines {
  private PointLines() {}

  static List<List<ChartPoint>> of(ChartSnapshot chart) {
    List<ChartPoint> points = chart.points();
    if (points.stream().allMatch(p -> p.lowerValue() == null)) {
      return List.of(points);
    }
    return List.of(
        points.stream().map(p -> side(p, p.value(), Signal.Side.BELOW)).toList(),
        points.stream()
            .filter(p -> p.lowerValue() != null)
            .map(p -> side(p, Objects.requireNonNull(p.lowerValue()), Signal.Side.ABOVE))
            .toList());
  }

  /** The point at that value, without the signals of the other side. */
  private static ChartPoint side(ChartPoint p, double value, Signal.Side other) {
    return p.with(
        value, null, p.signals().stream().filter(signal -> signal.side() != other).toList());
  }
}
