package org.chordlog.cli.statistics;

import java.util.List;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Signal;
import org.jspecify.annotations.Nullable;

/** A chart as {@code analyse --json} prints it; the names are read by other programs. */
record ChartJson(
    ChartKind kind,
    String quantity,
    String unit,
    List<Point> points,
    List<LimitSpan> limits,
    List<Mark> events,
    @Nullable Double lowerSpecificationLimit,
    @Nullable Double upperSpecificationLimit,
    @Nullable Double target,
    long pointCount,
    long signallingCount) {
  /** A point of the chart. */
  record Point(
      long number,
      double value,
      @Nullable Double lowerValue,
      int size,
      long firstReadingId,
      long lastReadingId,
      int piece,
      String position,
      long atMicros,
      boolean excluded,
      String reason,
      List<Signal> signals) {
    static Point of(ChartPoint p) {
      return new Point(
          p.number(),
          p.value(),
          p.lowerValue(),
          p.size(),
          p.firstReadingId(),
          p.lastReadingId(),
          p.piece(),
          p.position(),
          p.atMicros(),
          p.excluded(),
          p.reason(),
          p.signals());
    }
  }

  /** An event before the point with that number. */
  record Mark(long beforeNumber, Event event) {
    static Mark of(ChartSnapshot.EventMark mark) {
      return new Mark(mark.beforeNumber(), Event.of(mark.event()));
    }
  }

  /** An event of the job. */
  record Event(
      long id,
      long jobId,
      String machine,
      JobEvent.Kind kind,
      long afterReadingId,
      long atMicros,
      @Nullable Double settingBefore,
      @Nullable Double settingAfter,
      String materialLot,
      String note,
      String by) {
    static Event of(JobEvent e) {
      return new Event(
          e.id(),
          e.jobId(),
          e.machine(),
          e.kind(),
          e.afterReadingId(),
          e.atMicros(),
          e.settingBefore(),
          e.settingAfter(),
          e.materialLot(),
          e.note(),
          e.by());
    }
  }

  static ChartJson of(ChartSnapshot chart) {
    return new ChartJson(
        chart.kind(),
        chart.quantity(),
        chart.unit(),
        chart.points().stream().map(Point::of).toList(),
        chart.limits(),
        chart.events().stream().map(Mark::of).toList(),
        chart.lowerSpecificationLimit(),
        chart.upperSpecificationLimit(),
        chart.target(),
        chart.pointCount(),
        chart.signallingCount());
  }
}
