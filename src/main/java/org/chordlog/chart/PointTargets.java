package org.chordlog.chart;

import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;

/** The points of a control chart as things to point at. */
final class PointTargets {
  private PointTargets() {}

  static List<Target> of(ChartSnapshot chart, int decimals) {
    return Traces.of(chart).stream()
        .flatMap(List::stream)
        .map(p -> target(chart, p, decimals))
        .toList();
  }

  private static Target target(ChartSnapshot chart, ChartPoint p, int decimals) {
    String label =
        "%s %d: %s %s%s%s"
            .formatted(
                Words.counted(chart.kind()),
                p.number(),
                Words.number(p.value(), decimals),
                chart.unit(),
                p.excluded() ? ", excluded: " + p.reason() : "",
                p.signals().isEmpty() ? "" : ", test " + tests(p));
    return new Target((double) p.number(), p.value(), label, p);
  }

  /** The numbers of the run tests that fired at a point, each once. */
  static String tests(ChartPoint point) {
    return point.signals().stream()
        .map(signal -> String.valueOf(signal.test()))
        .distinct()
        .collect(Collectors.joining(","));
  }
}
