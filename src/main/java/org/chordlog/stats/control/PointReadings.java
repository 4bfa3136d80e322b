package org.chordlog.stats.control;

/** The readings of a chart point: the first and the last, and the piece, position, time of that. */
public record PointReadings(
    long firstReadingId, long lastReadingId, int piece, String position, long atMicros) {
  static PointReadings of(Observation only) {
    return new PointReadings(
        only.readingId(), only.readingId(), only.piece(), only.position(), only.atMicros());
  }
}
