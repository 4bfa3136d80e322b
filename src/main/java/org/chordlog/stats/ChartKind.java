package org.chordlog.stats;

/** The control charts that are kept, by their names in ISO 7870. */
public enum ChartKind {
  INDIVIDUALS,
  MOVING_RANGE,
  MEAN,
  RANGE,
  STANDARD_DEVIATION,
  EWMA,
  CUSUM
}
