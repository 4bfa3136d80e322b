package org.chordlog.web;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Scope;

/**
 * What the pictures of one characteristic of a job are drawn from, valid only inside Monitor.read;
 * with its distribution at the edge of control charts where there is room.
 */
record JobCharts(JobStatistics statistics, String characteristic, Scope scope, boolean withEdge)
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
  public Optional<DistributionSnapshot> edge() {
    return withEdge ? distribution() : Optional.empty();
  }

  @Override
  public Optional<PositionsSnapshot> positions() {
    return statistics.comparison();
  }

  /**
   * A copy that outlives the statistics: each kind of the first characteristic that has it, over
   * the whole job.
   */
  static ChartSource kept(JobStatistics statistics) {
    Map<ChartKind, ChartSnapshot> charts = new EnumMap<>(ChartKind.class);
    for (String name : statistics.characteristics()) {
      JobCharts of = new JobCharts(statistics, name, Scope.JOB, false);
      statistics
          .kinds(name)
          .forEach(kind -> of.chart(kind).ifPresent(c -> charts.putIfAbsent(kind, c)));
    }
    JobCharts first =
        new JobCharts(statistics, statistics.characteristics().get(0), Scope.JOB, false);
    return new Kept(charts, first.distribution(), first.positions());
  }

  private record Kept(
      Map<ChartKind, ChartSnapshot> charts,
      Optional<DistributionSnapshot> distribution,
      Optional<PositionsSnapshot> positions)
      implements ChartSource {
    @Override
    public Optional<ChartSnapshot> chart(ChartKind kind) {
      return Optional.ofNullable(charts.get(kind));
    }
  }
}
