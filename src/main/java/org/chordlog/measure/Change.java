package org.chordlog.measure;

/** One line of the append-only record of changes: who, when, what, from, to, why. */
public record Change(
    long id, long atMicros, String by, String what, String from, String to, String why) {}
