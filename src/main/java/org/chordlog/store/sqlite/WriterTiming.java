package org.chordlog.store.sqlite;

import org.chordlog.measure.Check;

/**
 * How the writer spends its time: the longest that samples wait for their block, the wait before a
 * refused commit is tried again, and the idle time after which the journal is emptied.
 */
public record WriterTiming(long tickMillis, long retryMillis, long idleMillis) {
  public static final WriterTiming USUAL = new WriterTiming(250, 2_000, 60_000);

  public WriterTiming {
    Check.within("tickMillis", tickMillis, 1, 1_000);
    Check.within("retryMillis", retryMillis, 1, 60_000);
    Check.within("idleMillis", idleMillis, 1, 3_600_000);
  }
}
