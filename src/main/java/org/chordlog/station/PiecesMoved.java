package org.chordlog.station;

import java.util.List;
import org.chordlog.measure.Reading;

/** Readings as they are in the job that they were moved to, at least one, in order. */
public record PiecesMoved(long jobId, List<Reading> readings) {
  public PiecesMoved {
    readings = List.copyOf(readings);
  }

  public int firstPiece() {
    return readings.stream().mapToInt(Reading::piece).min().orElseThrow();
  }

  public int lastPiece() {
    return readings.stream().mapToInt(Reading::piece).max().orElseThrow();
  }

  /** How many pieces have a reading among them. */
  public long pieces() {
    return readings.stream().mapToInt(Reading::piece).distinct().count();
  }
}
