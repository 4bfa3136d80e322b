package org.chordlog.stats.control;

/** What the within-subgroup standard deviation is estimated from. */
public enum Spread {
  RANGE,
  STANDARD_DEVIATION
}
