package org.chordlog.profile;

/**
 * Where a piece begins or ends to be bent: the middle of the rise and its length, mm; whether its
 * half level was seen, or only the rest of it, so that the place is less sure.
 */
public record Edge(double placeMm, double riseMm, boolean seen) {}
