package org.chordlog.measure;

/** A reading taken out of the statistics (or put back), with the reason; append-only. */
public record Exclusion(
    long id, long readingId, boolean excluded, String reason, long atMicros, String by) {
  public Exclusion {
    Check.text("reason", reason);
  }
}
