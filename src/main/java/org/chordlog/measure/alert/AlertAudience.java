package org.chordlog.measure.alert;

/** Who is told. */
public enum AlertAudience {
  /** Who repairs the bending machines. */
  MAINTENANCE,
  /** Who bends at the machine. */
  OPERATOR,
  /** Who calibrates the gauges. */
  GAUGE_KEEPER,
  QUALITY,
  /** Who looks after the computer. */
  ADMINISTRATOR
}
