package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.Signal;
import org.chordlog.verdict.SignalWords;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** A point of a control chart and the readings it is made of. */
record PointView(
    @JsonPropertyDescription("running number from 1") long number,
    double value,
    @JsonPropertyDescription("the lower sum of a CUSUM") @Nullable Double lowerValue,
    @JsonPropertyDescription("readings in it") int size,
    long firstReadingId,
    long lastReadingId,
    int piece,
    String position,
    String at,
    boolean excluded,
    @JsonPropertyDescription("why it is excluded") String reason,
    @JsonPropertyDescription("run tests that it breaks") List<Signal> signals,
    @JsonPropertyDescription("the same in words") List<String> broken) {
  static PointView of(ChartPoint point) {
    return new PointView(
        point.number(),
        point.value(),
        point.lowerValue(),
        point.size(),
        point.firstReadingId(),
        point.lastReadingId(),
        point.piece(),
        point.position(),
        Times.iso(point.atMicros()),
        point.excluded(),
        point.reason(),
        point.signals(),
        point.signals().stream().map(SignalWords::of).distinct().toList());
  }
}
