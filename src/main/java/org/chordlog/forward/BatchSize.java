package org.chordlog.forward;

import java.time.Duration;

/**
 * How much goes into one batch, and how long to wait after it, so that a slow line is not used for
 * more than it may be; a batch takes some seconds at most, so that what is new is not held up.
 */
record BatchSize(int rows, long bytes, long bytesASecond) {
  private static final int MOST_ROWS = 5_000;
  private static final long MOST_BYTES = 2_000_000;
  private static final int SECONDS = 2;
  private static final int ROW_BYTES = 400;

  /** Longer, and the server would take the connection for dead. */
  private static final long MOST_PAUSE = Duration.ofSeconds(60).toNanos();

  private static final long SECOND = Duration.ofSeconds(1).toNanos();

  /** {@code kilobytesASecond} 0: no limit. */
  static BatchSize of(int kilobytesASecond) {
    if (kilobytesASecond == 0) {
      return new BatchSize(MOST_ROWS, MOST_BYTES, 0);
    }
    long bytes = Math.min(MOST_BYTES, SECONDS * 1_000L * kilobytesASecond);
    int rows = (int) Math.max(1, Math.min(MOST_ROWS, bytes / ROW_BYTES));
    return new BatchSize(rows, bytes, 1_000L * kilobytesASecond);
  }

  /** Nanoseconds to wait after a batch of that many bytes that took so long. */
  long pause(long sentBytes, long tookNanos) {
    return bytesASecond == 0
        ? 0
        : Math.min(
            MOST_PAUSE,
            Math.max(0, Math.round((double) sentBytes / bytesASecond * SECOND) - tookNanos));
  }
}
