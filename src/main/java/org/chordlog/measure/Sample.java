package org.chordlog.measure;

/**
 * One value from the indicator as it showed it, before any zero, with the sign that grows as the
 * plunger is pushed in. {@code sequence} counts per station; {@code button} tells that the
 * indicator's own data button sent it.
 */
public record Sample(
    long sequence,
    long monotonicNanos,
    long wallMicros,
    long valueNm,
    int channel,
    boolean button) {}
