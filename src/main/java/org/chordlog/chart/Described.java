package org.chordlog.chart;

import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;

/** A picture in words, for those who can't see it. */
final class Described {
  private Described() {}

  static String of(List<ChartSnapshot> charts) {
    return charts.stream().map(Described::of).collect(Collectors.joining(" "));
  }

  private static String of(ChartSnapshot chart) {
    int decimals = ValueScale.of(chart).decimals();
    String range =
        chart.points().isEmpty()
            ? ""
            : ", from %s to %s %s"
                .formatted(
                    Words.number(
                        chart.points().stream().mapToDouble(ChartPoint::value).min().orElseThrow(),
                        decimals),
                    Words.number(
                        chart.points().stream().mapToDouble(ChartPoint::value).max().orElseThrow(),
                        decimals),
                    chart.unit());
    return "%s chart, %d points%s; %d with a signal, %d excluded, %d events."
        .formatted(
            Words.of(chart.kind(), chart.quantity()),
            chart.pointCount(),
            range,
            chart.signallingCount(),
            chart.points().stream().filter(ChartPoint::excluded).count(),
            chart.events().size());
  }
}
