package org.chordlog.stats.control;

import org.jspecify.annotations.Nullable;

/** Centre and control limits over the points {@code fromNumber} to {@code toNumber} of a chart. */
public record LimitSpan(
    long fromNumber,
    long toNumber,
    double centre,
    @Nullable Double lower,
    @Nullable Double upper,
    boolean frozen,
    int phase) {}
