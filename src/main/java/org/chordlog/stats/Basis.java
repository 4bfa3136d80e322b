package org.chordlog.stats;

/**
 * What points of a stretch were judged by; limits are NaN where there are none. Neighbours share
 * one, since most of the memory of a chart would be their equal limits.
 */
record Basis(double centre, double lower, double upper, int phase, boolean frozen) {
  /** That one if it is equal, so that a single one is kept. */
  Basis orSame(Basis kept) {
    return equals(kept) ? kept : this;
  }
}
