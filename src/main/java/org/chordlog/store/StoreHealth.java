package org.chordlog.store;

/** How the store is doing; {@code fault} is empty when all is well. */
public record StoreHealth(
    boolean writable,
    String fault,
    int queuedCommands,
    int queueCapacity,
    long committedReadings,
    long droppedSamples,
    long lastCommitMicros,
    double commitMillisP95,
    long databaseBytes,
    long walBytes) {}
