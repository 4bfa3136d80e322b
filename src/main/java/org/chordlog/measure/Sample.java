package org.chordlog.measure;

/**
 * One value from the indicator as it showed it, before any zero. {@code sequence} counts per
 * station; {@code button} tells that the indicator's own data button sent it.
 */
public record Sample(
    long sequence,
    long monotonicNanos,
    long wallMicros,
    long valueNm,
    int channel,
    boolean button) {}
