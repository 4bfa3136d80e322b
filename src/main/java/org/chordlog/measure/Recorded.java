package org.chordlog.measure;

/** When something was recorded and by whom. */
public record Recorded(long atMicros, String by) {}
