package org.chordlog.web;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.stats.ChartKind;
import org.chordlog.stats.ChartSnapshot;
import org.chordlog.stats.JobStatistics;

/** The charts of a job's first characteristic that keeps each, taken at one moment. */
record KeptCharts(Map<ChartKind, ChartSnapshot> charts) implements ChartSource {
  static KeptCharts of(JobStatistics statistics) {
    Map<ChartKind, ChartSnapshot> charts = new EnumMap<>(ChartKind.class);
    for (String name : statistics.characteristics()) {
      for (ChartKind kind : statistics.kinds(name)) {
        charts.computeIfAbsent(kind, any -> statistics.chart(name, any));
      }
    }
    return new KeptCharts(charts);
  }

  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return Optional.ofNullable(charts.get(kind));
  }
}
