package org.chordlog.link;

import java.util.random.RandomGenerator;

/**
 * How long to wait before the next attempt: doubling from {@code firstNanos} to {@code mostNanos}
 * with jitter of the upper half, and starting over only after a link that stayed open for {@code
 * stableNanos}.
 */
public final class Backoff {
  private static final long SECOND = 1_000_000_000L;

  private final long firstNanos;
  private final long mostNanos;
  private final long stableNanos;
  private final RandomGenerator random;
  private long nextNanos;

  public Backoff(long firstNanos, long mostNanos, long stableNanos, RandomGenerator random) {
    this.firstNanos = firstNanos;
    this.mostNanos = mostNanos;
    this.stableNanos = stableNanos;
    this.random = random;
    this.nextNanos = firstNanos;
  }

  /** 1 s to 10 s, starting over after 30 s of a good link. */
  public static Backoff forPorts(RandomGenerator random) {
    return new Backoff(SECOND, 10 * SECOND, 30 * SECOND, random);
  }

  /** The next wait, nanoseconds. */
  public long next() {
    long wait = nextNanos;
    nextNanos = Math.min(mostNanos, 2 * nextNanos);
    return jittered(wait);
  }

  /**
   * The shortest wait, after the loss of a link that had delivered; the doubling stays as it is.
   */
  public long shortest() {
    return jittered(firstNanos);
  }

  private long jittered(long wait) {
    return wait / 2 + random.nextLong(wait / 2 + 1);
  }

  /** Tells how long the link was open before it was lost. */
  public void stood(long nanos) {
    if (nanos >= stableNanos) {
      nextNanos = firstNanos;
    }
  }
}
