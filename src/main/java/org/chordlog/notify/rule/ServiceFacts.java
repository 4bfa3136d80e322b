package org.chordlog.notify.rule;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the service itself. {@code fault}: why the store can't be written, empty where
 * it can; {@code lostReadings}: since the last round; {@code alteredRecords}: what the last look at
 * the chain of hashes found; what is null is not known.
 */
public record ServiceFacts(
    String fault,
    long lostReadings,
    @Nullable List<String> alteredRecords,
    long freeBytes,
    @Nullable Long backupMicros,
    @Nullable Long certificateDaysLeft) {
  public ServiceFacts {
    alteredRecords = alteredRecords == null ? null : List.copyOf(alteredRecords);
  }
}
