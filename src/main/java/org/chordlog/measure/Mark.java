package org.chordlog.measure;

/** What a reader of a reading must know about it. */
public enum Mark {
  ZERO_MISSING,
  ZERO_STALE,
  CALIBRATION_MISSING,
  CALIBRATION_OVERDUE,
  CHECK_FAILED,
  CLOCK_DOUBTFUL,
  IMPORTED
}
