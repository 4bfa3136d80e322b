package org.chordlog.notify;

import java.util.List;
import java.util.function.Supplier;
import org.chordlog.monitor.Monitor;
import org.chordlog.station.StationStatus;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** What is watched; every supplier is asked on the watch's thread. */
public record Watched(
    Store store, Supplier<List<StationStatus>> stations, Monitor monitor, Outside outside) {
  /**
   * What is known beside the store: whole days until the certificate in use ends, and when the
   * newest backup was made, UTC microseconds, and what the last look at the chain of hashes found;
   * each null where it is not known.
   */
  public record Outside(
      Supplier<@Nullable Long> certificateDaysLeft,
      Supplier<@Nullable Long> backupMicros,
      Supplier<@Nullable List<String>> alteredRecords) {
    public static final Outside UNKNOWN = new Outside(() -> null, () -> null, () -> null);
  }
}
