package org.chordlog.decode;

/** Bytes as they came from a link, with their time. */
@SuppressWarnings("ArrayRecordComponent")
public record Arrival(long monotonicNanos, byte[] bytes) {}
