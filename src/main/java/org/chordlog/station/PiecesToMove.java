package org.chordlog.station;

/**
 * The pieces of a job from {@code firstPiece} on, which belong to another job. {@code
 * lastReadingId} is the newest reading of the job as whoever asks has seen it.
 */
public record PiecesToMove(long jobId, int firstPiece, long lastReadingId, long toJobId) {
  /** Most readings that are moved at once. */
  public static final int MOST = 1_000;
}
