package org.chordlog.monitor;

/**
 * What a job's statistics include: the newest reading, event and exclusion, and how many stored
 * readings they do not include yet.
 */
public record Standing(
    long count,
    long readingId,
    long eventId,
    long exclusionId,
    long withdrawalId,
    long answerId,
    int planHash,
    long behind) {
  /** Changes exactly when a snapshot could; for cache validators. */
  public String tag() {
    return readingId
        + "-"
        + eventId
        + "-"
        + exclusionId
        + "-"
        + withdrawalId
        + "-"
        + answerId
        + "-"
        + Integer.toHexString(planHash);
  }
}
