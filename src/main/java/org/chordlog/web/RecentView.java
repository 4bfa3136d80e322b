package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.Decision;
import org.jspecify.annotations.Nullable;

/** The last pieces of a station's job, as a small chart shows them; without excluded readings. */
record RecentView(
    String station,
    @Nullable Long jobId,
    @JsonPropertyDescription("the oldest first") List<Point> points,
    @JsonPropertyDescription("what changed meanwhile: corrections, lots, set-ups")
        List<JobEventView> events) {

  /** A reading in short. */
  record Point(
      long readingId,
      int piece,
      String position,
      @JsonPropertyDescription("how often the piece had been rolled, from 1") int pass,
      String at,
      @JsonPropertyDescription("null when it can't be told from flat") @Nullable Double radiusMm,
      @JsonPropertyDescription("against the limits in force now") Decision decision) {
    static Point of(ReadingView reading) {
      return new Point(
          reading.id(),
          reading.piece(),
          reading.position(),
          reading.pass(),
          reading.at(),
          reading.radiusMm(),
          reading.decision());
    }
  }

  static RecentView nothing(String station) {
    return new RecentView(station, null, List.of(), List.of());
  }

  static RecentView of(
      String station, long jobId, List<ReadingView> readings, List<JobEventView> events) {
    long first = readings.isEmpty() ? Long.MAX_VALUE : readings.get(0).id();
    return new RecentView(
        station,
        jobId,
        readings.stream().map(Point::of).toList(),
        events.stream()
            .filter(event -> event.startsPhase() && event.takenBackReason() == null)
            .filter(event -> event.afterReadingId() >= first)
            .toList());
  }
}
