package org.chordlog.store;

import java.util.List;

/**
 * How the store is doing. {@code fault} is empty when all is well; {@code warnings} lists what
 * needs attention though everything is still stored.
 */
public record StoreHealth(
    boolean writable,
    String fault,
    List<String> warnings,
    Queue queue,
    Counts counts,
    Commits commits,
    Space space) {
  /** Commands that wait for a commit, and how many may. */
  public record Queue(int waiting, int capacity) {}

  /** Since the store was opened. Dropped: refused, or given up when the store closed. */
  public record Counts(
      long committedReadings, long droppedReadings, long keptSamples, long droppedSamples) {}

  /** Time of the last commit, UTC µs (0: none yet), and the 95th percentile of the newest ones. */
  public record Commits(long lastMicros, double millisP95) {}

  /**
   * Bytes of the data, of the log of commits that are not in it yet (0 where a store has none), and
   * free on the disk.
   */
  public record Space(long dataBytes, long logBytes, long freeBytes) {}

  public StoreHealth {
    warnings = List.copyOf(warnings);
  }
}
