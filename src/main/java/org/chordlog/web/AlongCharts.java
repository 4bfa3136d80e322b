package org.chordlog.web;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.AlongStatistics;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;

/** The control charts of one measure along the pieces of a job, detached from its statistics. */
record AlongCharts(Map<ChartKind, ChartSnapshot> charts) implements ChartSource {
  private static final List<ChartKind> KINDS =
      List.of(ChartKind.INDIVIDUALS, ChartKind.MOVING_RANGE, ChartKind.EWMA, ChartKind.CUSUM);

  AlongCharts {
    charts = Map.copyOf(charts);
  }

  /** None where no piece ran through. */
  static AlongCharts of(AlongStatistics statistics, AlongMeasure measure) {
    Map<ChartKind, ChartSnapshot> charts = new EnumMap<>(ChartKind.class);
    if (statistics.count() > 0) {
      KINDS.forEach(kind -> charts.put(kind, statistics.chart(measure, kind)));
    }
    return new AlongCharts(charts);
  }

  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return Optional.ofNullable(charts.get(kind));
  }
}
