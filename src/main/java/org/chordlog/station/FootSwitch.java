package org.chordlog.station;

/**
 * A foot switch: pressed once for each closing, chatter of its contacts left out. Used by the
 * station's thread alone.
 */
final class FootSwitch {
  private static final long CHATTER_NANOS = 50_000_000L;

  private boolean closed;
  private long changedNanos = Long.MIN_VALUE / 2;

  /** True at the moment it is pressed. */
  boolean pressed(boolean nowClosed, long nanos) {
    if (nowClosed == closed || nanos - changedNanos < CHATTER_NANOS) {
      return false;
    }
    closed = nowClosed;
    changedNanos = nanos;
    return closed;
  }
}
