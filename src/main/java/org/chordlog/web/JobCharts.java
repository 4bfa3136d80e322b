package org.chordlog.web;

import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.stats.ChartKind;
import org.chordlog.stats.ChartSnapshot;
import org.chordlog.stats.JobStatistics;

/** What the pictures of one characteristic of a job are drawn from. */
record JobCharts(JobStatistics statistics, String characteristic) implements ChartSource {
  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return statistics.kinds(characteristic).contains(kind)
        ? Optional.of(statistics.chart(characteristic, kind))
        : Optional.empty();
  }
}
