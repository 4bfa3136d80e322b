package org.chordlog.stats.control;

/**
 * What points of a stretch were judged by; limits are NaN where there are none. Neighbours share
 * one, since most of the memory of a chart would be their equal limits.
 */
public record JudgedLimits(double centre, double lower, double upper, int phase, boolean frozen) {
  /** That one if it is equal, so that a single one is kept. */
  JudgedLimits orSame(JudgedLimits kept) {
    return equals(kept) ? kept : this;
  }
}
