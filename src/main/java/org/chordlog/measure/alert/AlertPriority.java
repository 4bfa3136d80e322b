package org.chordlog.measure.alert;

/** How soon somebody must act, the most urgent first. */
public enum AlertPriority {
  HIGH,
  MEDIUM,
  LOW
}
