package org.chordlog.store;

import org.chordlog.measure.Check;

/**
 * How a store spends its time and the disk: the longest that samples wait for their block, the wait
 * before a refused commit is tried again, the idle time after which its log is written back and
 * emptied, the pause between rounds of housekeeping, how long traces are kept (0: without end), and
 * the free space below which samples are no longer kept.
 */
public record StoreSettings(
    long tickMillis,
    long retryMillis,
    long idleMillis,
    long roundMillis,
    int traceDays,
    long traceFreeBytes) {
  public static final StoreSettings USUAL =
      new StoreSettings(250, 2_000, 60_000, 10_000, 30, 500L << 20);

  public StoreSettings {
    Check.within("tickMillis", tickMillis, 1, 1_000);
    Check.within("retryMillis", retryMillis, 1, 60_000);
    Check.within("idleMillis", idleMillis, 1, 3_600_000);
    Check.within("roundMillis", roundMillis, 1, 3_600_000);
    Check.within("traceDays", traceDays, 0, 36_500);
    Check.within("traceFreeBytes", traceFreeBytes, 0, Long.MAX_VALUE);
  }

  public StoreSettings withTraceDays(int days) {
    return new StoreSettings(
        tickMillis, retryMillis, idleMillis, roundMillis, days, traceFreeBytes);
  }

  public StoreSettings withTraceFreeBytes(long bytes) {
    return new StoreSettings(tickMillis, retryMillis, idleMillis, roundMillis, traceDays, bytes);
  }
}
