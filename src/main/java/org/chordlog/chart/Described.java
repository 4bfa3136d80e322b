package org.chordlog.chart;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;

/** A picture in words, for those who can't see it. */
final class Described {
  private Described() {}

  static String of(List<ChartSnapshot> charts) {
    return charts.stream().map(Described::of).collect(Collectors.joining(" "));
  }

  private static DoubleStream counting(ChartSnapshot chart) {
    return chart.points().stream().filter(p -> !p.excluded()).mapToDouble(ChartPoint::value);
  }

  private static String of(ChartSnapshot chart) {
    int decimals = ValueScale.of(chart).decimals();
    String range =
        counting(chart).findAny().isEmpty()
            ? ""
            : ", from %s to %s %s"
                .formatted(
                    ChartWords.number(counting(chart).min().orElseThrow(), decimals),
                    ChartWords.number(counting(chart).max().orElseThrow(), decimals),
                    chart.unit());
    return "%s chart, %s%s; %s with a signal, %s excluded, %s."
        .formatted(
            ChartWords.of(chart.kind(), chart.quantity()),
            ChartWords.counted(chart.pointCount(), "point"),
            range,
            chart.signallingCount(),
            chart.points().stream().filter(ChartPoint::excluded).count(),
            ChartWords.counted(chart.events().size(), "event"));
  }
}
