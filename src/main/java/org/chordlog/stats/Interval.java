package org.chordlog.stats;

/** A value with its confidence limits. */
public record Interval(double value, double lower, double upper) {}
