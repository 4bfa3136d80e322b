package org.chordlog.monitor;

/**
 * How far a job's statistics are: the newest reading, event and exclusion that are in them, and how
 * many readings that are kept are not in yet.
 */
public record Standing(
    long count, long readingId, long eventId, long exclusionId, int planHash, long behind) {
  /** Changes exactly when a snapshot could; for cache validators. */
  public String tag() {
    return readingId + "-" + eventId + "-" + exclusionId + "-" + Integer.toHexString(planHash);
  }
}
