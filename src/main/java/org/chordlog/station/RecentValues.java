package org.chordlog.station;

import java.util.Arrays;

/** The newest values of an indicator, for a zero. */
final class RecentValues {
  static final int LEAST_COUNT = 5;
  private static final int KEPT = 256;
  private static final long WINDOW_NANOS = 1_000_000_000L;
  private static final long OLDEST_NANOS = 5_000_000_000L;

  private final long[] values = new long[KEPT];
  private final long[] nanos = new long[KEPT];
  private int count;

  void add(long valueNm, long atNanos) {
    values[count % KEPT] = valueNm;
    nanos[count % KEPT] = atNanos;
    count = count + 1 == 2 * KEPT ? KEPT : count + 1;
  }

  void clear() {
    count = 0;
  }

  /** Those of the last second; of the last five seconds where that gives too few. */
  long[] since(long nowNanos) {
    long[] second = within(nowNanos, WINDOW_NANOS);
    return second.length >= LEAST_COUNT ? second : within(nowNanos, OLDEST_NANOS);
  }

  private long[] within(long nowNanos, long window) {
    int most = Math.min(count, KEPT);
    long[] found = new long[most];
    int n = 0;
    for (int i = 0; i < most; i++) {
      if (nowNanos - nanos[i] <= window) {
        found[n++] = values[i];
      }
    }
    return Arrays.copyOf(found, n);
  }
}
