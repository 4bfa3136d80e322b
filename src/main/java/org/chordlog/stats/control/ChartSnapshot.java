package org.chordlog.stats.control;

import java.util.List;
import org.chordlog.measure.JobEvent;
import org.jspecify.annotations.Nullable;

/**
 * A chart at one moment: immutable, thinned to what a picture can show, without losing extremes or
 * signals.
 */
public record ChartSnapshot(
    ChartKind kind,
    Axis axis,
    List<ChartPoint> points,
    List<LimitSpan> limits,
    List<EventMark> events,
    Limits specification,
    Totals totals) {
  /** What is left out of a long chart, in words. */
  public static final String THINNING =
      "Of the points before the newest %s a chart keeps, stretch by stretch, the lowest, the highest and the signal farthest from the centre."
          .formatted(Thinner.RECENT);

  /** How many points it has in all, thinned or not, and how many of them broke a run test. */
  public record Totals(long points, long signalling) {}

  /** An event of the job, drawn before the point with that number. */
  public record EventMark(long beforeNumber, JobEvent event) {}

  public ChartSnapshot {
    points = List.copyOf(points);
    limits = List.copyOf(limits);
    events = List.copyOf(events);
  }

  /** The same with the newest points of a long chart thinned as much as the older ones. */
  public ChartSnapshot evenly() {
    return new ChartSnapshot(
        kind, axis, EvenPoints.of(points, totals.points()), limits, events, specification, totals);
  }

  /** Points that broke a run test and are not among {@link #points}. */
  public long signallingNotKept() {
    return totals.signalling() - points.stream().filter(ChartPoint::signalling).count();
  }

  public String quantity() {
    return axis.quantity();
  }

  public String unit() {
    return axis.unit();
  }

  public @Nullable Double lowerSpecificationLimit() {
    return specification.lower();
  }

  public @Nullable Double upperSpecificationLimit() {
    return specification.upper();
  }

  public @Nullable Double target() {
    return specification.target();
  }

  public long pointCount() {
    return totals.points();
  }

  public long signallingCount() {
    return totals.signalling();
  }
}
