package org.chordlog.measure;

/** ISO 14253-1: inside the limits, or outside, by more than the guard band; else undecided. */
public enum Decision {
  CONFORMS,
  DOES_NOT_CONFORM,
  UNDECIDED,
  NO_LIMITS
}
