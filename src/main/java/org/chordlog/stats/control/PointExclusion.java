package org.chordlog.stats.control;

/**
 * Whether a chart point is excluded and why; of a point that has lost only some of its readings the
 * reason tells how many.
 */
public record PointExclusion(boolean excluded, String reason) {}
