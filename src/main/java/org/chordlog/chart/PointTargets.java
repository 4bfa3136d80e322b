package org.chordlog.chart;

import java.util.List;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;

/** The points of a control chart as things to point at. */
final class PointTargets {
  private PointTargets() {}

  static List<Target> of(ChartSnapshot chart, int decimals) {
    return PointLines.of(chart).stream()
        .flatMap(List::stream)
        .map(p -> target(chart, p, decimals))
        .toList();
  }

  private static Target target(ChartSnapshot chart, ChartPoint p, int decimals) {
    String label =
        "%s %s: %s %s%s"
            .formatted(
                ChartWords.counted(chart),
                p.number(),
                ChartWords.number(p.value(), decimals),
                chart.unit(),
                p.excluded() ? ", excluded: " + p.reason() : "");
    return new Target((double) p.number(), p.value(), label, limits(chart, p, decimals), p);
  }

  /** The control limits in force at a point, in words; empty where there were none yet. */
  private static String limits(ChartSnapshot chart, ChartPoint p, int decimals) {
    return chart.limits().stream()
        .filter(span -> p.number() >= span.fromNumber() && p.number() <= span.toNumber())
        .reduce((older, newer) -> newer)
        .map(span -> limits(span, decimals))
        .map(words -> words + " " + chart.unit())
        .orElse("");
  }

  private static String limits(LimitSpan span, int decimals) {
    Double lower = span.lower();
    Double upper = span.upper();
    String centre = "Centre " + ChartWords.number(span.centre(), decimals);
    if (lower != null && upper != null) {
      return "Control limits "
          + ChartWords.number(lower, decimals)
          + " to "
          + ChartWords.number(upper, decimals);
    }
    return upper == null ? centre : "Upper control limit " + ChartWords.number(upper, decimals);
  }
}
