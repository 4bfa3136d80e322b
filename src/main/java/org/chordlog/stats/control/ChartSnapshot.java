package org.chordlog.stats.control;

import java.util.List;
import org.chordlog.measure.JobEvent;
import org.jspecify.annotations.Nullable;

/**
 * A chart as it stands: immutable, thinned to what a picture can show, extremes and signals kept.
 * {@code pointCount} points it has in all, of which {@code signallingCount} broke a run test.
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
    long pointCount,
    long signallingCount) {
  /** What is left out of a long chart, in words. */
  public static final String THINNING =
      "Of the points before the newest %d a chart keeps, stretch by stretch, the lowest, the highest and the signal farthest from the centre."
          .formatted(Thinner.RECENT);

  /** An event of the job, drawn before the point with that number. */
  public record EventMark(long beforeNumber, JobEvent event) {}

  public ChartSnapshot {
    points = List.copyOf(points);
    limits = List.copyOf(limits);
    events = List.copyOf(events);
  }

  /** Points that broke a run test and are not among {@link #points}. */
  public long signallingNotKept() {
    return signallingCount - points.stream().filter(ChartPoint::signalling).count();
  }
}
