package org.chordlog.web;

/** What a station needs somebody for, the most urgent first. */
enum StationIssue {
  READINGS_LOST,
  LINK,
  INDICATOR,
  CHECK_FAILED,
  DOES_NOT_CONFORM,
  NO_JOB,
  NO_BRIDGE,
  ZERO_MISSING,
  ZERO_STALE,
  CALIBRATION_OVERDUE,
  OUT_OF_CONTROL,
  UNDECIDED,
  CALIBRATION_MISSING,
  CALIBRATION_DUE_SOON
}
