package org.chordlog.capture;

/**
 * Learns how often samples arrive, and tells a gap: three times the usual interval, and no less
 * than what a driver that hands them over in lumps may take.
 */
final class Arrivals {
  private static final long LEAST_GAP_NANOS = 300_000_000L;
  private static final int MEMORY = 32;
  private static final double MOST_GROWTH = 10;

  private long last;
  private boolean lastKnown;
  private int intervals;
  private double periodNanos;

  /** Takes the time of a sample; true when it comes after a gap. */
  boolean gapBefore(long monotonicNanos) {
    long interval = monotonicNanos - last;
    last = monotonicNanos;
    if (!lastKnown) {
      lastKnown = true;
      return false;
    }
    boolean gap = intervals > 3 && interval > gapNanos();
    learn((double) interval);
    return gap;
  }

  private void learn(double interval) {
    boolean wellKnown = intervals == MEMORY;
    intervals = Math.min(intervals + 1, MEMORY);
    double capped = wellKnown ? Math.min(interval, MOST_GROWTH * periodNanos) : interval;
    periodNanos += (capped - periodNanos) / intervals;
  }

  /** Longest silence that is no gap yet. */
  long gapNanos() {
    return Math.max(LEAST_GAP_NANOS, Math.round(3 * periodNanos));
  }

  /** Usual interval; 0 before the second sample. */
  double periodNanos() {
    return periodNanos;
  }

  /** The next sample comes after a known gap, which says nothing about the interval. */
  void forgetLast() {
    lastKnown = false;
  }
}
