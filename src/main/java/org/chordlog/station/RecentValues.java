package org.chordlog.station;

import java.util.Arrays;

/** The newest values of an indicator, for a zero. Used by the station's thread alone. */
final class RecentValues {
  static final int LEAST_COUNT = 5;
  private static final int KEPT = 256;
  private static final int WIDER = 5;

  private final long[] values = new long[KEPT];
  private final long[] nanos = new long[KEPT];
  private final long windowNanos;
  private int count;

  RecentValues(long windowNanos) {
    this.windowNanos = windowNanos;
  }

  void add(long valueNm, long atNanos) {
    values[count % KEPT] = valueNm;
    nanos[count % KEPT] = atNanos;
    count = count + 1 == 2 * KEPT ? KEPT : count + 1;
  }

  void clear() {
    count = 0;
  }

  /** Those of the window before now; of a window five times as long where that gives too few. */
  long[] since(long nowNanos) {
    long[] newest = within(nowNanos, windowNanos);
    return newest.length >= LEAST_COUNT ? newest : within(nowNanos, WIDER * windowNanos);
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
