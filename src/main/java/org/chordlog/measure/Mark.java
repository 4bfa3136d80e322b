package org.chordlog.measure;

/** What a reader of a reading must know about it. */
public enum Mark {
  ZERO_MISSING,
  ZERO_STALE,
  CALIBRATION_MISSING,
  CALIBRATION_OVERDUE,
  CHECK_FAILED,
  CLOCK_DOUBTFUL,
  IMPORTED,
  /** The indicator's zero moved after the zero on the flat was taken. */
  ZERO_MOVED,
  /** The zero was set with another bridge, or before this one was taken off for another. */
  ZERO_OF_OTHER_BRIDGE,
  /** Free air says that the zero may not have been set on the flat. */
  ZERO_DOUBTFUL
}
