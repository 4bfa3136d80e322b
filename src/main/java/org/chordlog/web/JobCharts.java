package org.chordlog.web;

import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.stats.ChartKind;
import org.chordlog.stats.ChartSnapshot;
import org.chordlog.stats.DistributionSnapshot;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.Summary;

/** What the pictures of one characteristic of a job are drawn from. */
record JobCharts(JobStatistics statistics, String characteristic, Summary.Scope scope)
    implements ChartSource {
  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return statistics.kinds(characteristic).contains(kind)
        ? Optional.of(statistics.chart(characteristic, kind))
        : Optional.empty();
  }

  @Override
  public Optional<DistributionSnapshot> distribution() {
    return Optional.of(statistics.distribution(characteristic, scope));
  }

  @Override
  public Optional<PositionsSnapshot> positions() {
    return statistics.comparison();
  }
}
