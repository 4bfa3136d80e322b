package org.chordlog.web;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.stats.ChartKind;
import org.chordlog.stats.ChartSnapshot;
import org.chordlog.stats.DistributionSnapshot;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.Summary;

/** The charts of a job's first characteristic that keeps each, taken at one moment. */
record KeptCharts(
    Map<ChartKind, ChartSnapshot> charts,
    Optional<DistributionSnapshot> distribution,
    Optional<PositionsSnapshot> positions)
    implements ChartSource {
  static KeptCharts of(JobStatistics statistics) {
    Map<ChartKind, ChartSnapshot> charts = new EnumMap<>(ChartKind.class);
    for (String name : statistics.characteristics()) {
      for (ChartKind kind : statistics.kinds(name)) {
        charts.computeIfAbsent(kind, any -> statistics.chart(name, any));
      }
    }
    String first = statistics.characteristics().get(0);
    return new KeptCharts(
        charts,
        Optional.of(statistics.distribution(first, Summary.Scope.JOB)),
        statistics.comparison());
  }

  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return Optional.ofNullable(charts.get(kind));
  }
}
