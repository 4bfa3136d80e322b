package org.chordlog.measure;

/** What was known of the wall clock when a time was taken. */
public enum ClockState {
  STEADY,
  STEPPED,
  BEFORE_BUILD
}
