package org.chordlog.stats.control;

/**
 * Centre and limits that a run of points was judged against; limits are NaN where there are none.
 * Neighbouring points share one object, since most of the memory of a chart would be their equal
 * limits.
 */
record JudgedLimits(double centre, double lower, double upper, int phase, boolean frozen) {
  /** That one if it is equal, so that there is only one. */
  JudgedLimits orSame(JudgedLimits kept) {
    return equals(kept) ? kept : this;
  }
}
