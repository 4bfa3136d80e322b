package org.chordlog.stats;

import java.util.List;
import org.chordlog.measure.JobEvent;
import org.jspecify.annotations.Nullable;

/**
 * A chart as it stands: immutable, thinned to what a picture can show, extremes and signals kept.
 */
public record ChartSnapshot(
    ChartKind kind,
    String quantity,
    String unit,
    List<ChartPoint> points,
    List<LimitSpan> limits,
    List<EventMark> events,
    @Nullable Double lowerSpecificationLimit,
    @Nullable Double upperSpecificationLimit,
    @Nullable Double target,
    long pointCount) {
  /** An event of the job, drawn before the point with that number. */
  public record EventMark(long beforeNumber, JobEvent event) {}

  public ChartSnapshot {
    points = List.copyOf(points);
    limits = List.copyOf(limits);
    events = List.copyOf(events);
  }
}
