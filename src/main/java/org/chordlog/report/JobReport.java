package org.chordlog.report;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.stats.capability.Summary;

/**
 * Everything a report shows; equal inputs give equal bytes. {@code readings} are the newest of
 * {@code readingCount} in ascending order, {@code setUps} by id, {@code checks} of the gauge, the
 * newest first; times are printed in {@code zone}.
 */
public record JobReport(
    Job job,
    List<Reading> readings,
    long readingCount,
    List<Exclusion> exclusions,
    List<JobEvent> events,
    Map<Long, SetUp> setUps,
    List<Summary> summaries,
    ChartSource charts,
    List<UncertaintyLine> uncertainty,
    List<InterimCheck> checks,
    Instant madeAt,
    ZoneId zone) {
  public JobReport {
    readings = List.copyOf(readings);
    exclusions = List.copyOf(exclusions);
    events = List.copyOf(events);
    setUps = Map.copyOf(setUps);
    summaries = List.copyOf(summaries);
    uncertainty = List.copyOf(uncertainty);
    checks = List.copyOf(checks);
  }

  /** What the newest reading was computed from. */
  Optional<SetUp> newestSetUp() {
    return readings.isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(setUps.get(readings.get(readings.size() - 1).setUpId()));
  }

  /** Why a reading is left out of the statistics; empty where it counts. */
  String exclusion(long readingId) {
    String reason = "";
    for (Exclusion exclusion : exclusions) {
      if (exclusion.readingId() == readingId) {
        reason = exclusion.excluded() ? exclusion.reason() : "";
      }
    }
    return reason;
  }
}
