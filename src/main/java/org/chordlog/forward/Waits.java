package org.chordlog.forward;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * How long to wait before the plant is tried again: any time up to a bound that doubles from 1 s to
 * 5 min, so that the computers of a plant do not all come back in the same moment. The bound starts
 * over after a connection that worked for 60 s. One thread.
 */
final class Waits {
  private static final long FIRST_NANOS = Duration.ofSeconds(1).toNanos();
  private static final long MOST_NANOS = Duration.ofMinutes(5).toNanos();
  private static final long STABLE_NANOS = Duration.ofSeconds(60).toNanos();

  private final RandomGenerator random;
  private long boundNanos = FIRST_NANOS;

  Waits(RandomGenerator random) {
    this.random = random;
  }

  /** The next wait, nanoseconds. */
  long next() {
    long wait = random.nextLong(boundNanos + 1);
    boundNanos = Math.min(MOST_NANOS, 2 * boundNanos);
    return wait;
  }

  /** Tells how long a connection worked before it was lost. */
  void worked(long nanos) {
    if (nanos >= STABLE_NANOS) {
      boundNanos = FIRST_NANOS;
    }
  }
}
