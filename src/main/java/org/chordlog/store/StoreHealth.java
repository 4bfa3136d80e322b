package org.chordlog.store;

import java.util.List;

/**
 * How the store is doing; {@code fault} is empty when all is well, {@code warnings} lists what
 * needs attention though everything is still kept.
 */
public record StoreHealth(
    boolean writable,
    String fault,
    List<String> warnings,
    int queuedCommands,
    int queueCapacity,
    long committedReadings,
    long droppedReadings,
    long keptSamples,
    long droppedSamples,
    long lastCommitMicros,
    double commitMillisP95,
    long databaseBytes,
    long walBytes,
    long freeBytes) {
  public StoreHealth {
    warnings = List.copyOf(warnings);
  }
}
