package org.chordlog.capture;

/**
 * At which end of the indicator's values the plunger hangs free: LOW where pushing it in counts up.
 */
public enum FreeAirEnd {
  LOW,
  HIGH
}
