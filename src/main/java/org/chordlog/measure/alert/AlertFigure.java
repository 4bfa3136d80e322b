package org.chordlog.measure.alert;

/** A figure that an alert rests on, with its unit. Names are stored. */
public enum AlertFigure {
  /** Of the machine, when it was judged. */
  PIECES,
  /** First piece of what was found, by its number among all of the machine. */
  SINCE_PIECE,
  /** Relative change of curvature a piece, with the ends of its interval at 95 %. */
  CHANGE_PER_PIECE,
  CHANGE_PER_PIECE_LOWER,
  CHANGE_PER_PIECE_UPPER,
  /** Relative change of curvature in all so far. */
  CHANGE,
  /** Corrections of the rollers since it began. */
  CORRECTIONS,
  /** Target radius of the job under way, and how far its nearer limit is from it. */
  TARGET_MM,
  TOLERANCE_MM,
  /** Until a limit is reached, as the line goes: pieces, and hours of bending at the last pace. */
  PIECES_LEFT,
  HOURS_LEFT,
  /** The same at the earliest (95 %); only where a limit is near. */
  PIECES_LEFT_AT_LEAST,
  /** Of a check: what was measured on the master less what it is. */
  DEVIATION_MM,
  /** Radius of that master. */
  MASTER_MM,
  /** Readings since the check before that passed. */
  READINGS_IN_DOUBT,
  /** Whole days, negative once it is past. */
  DAYS_LEFT,
  HOURS,
  MINUTES,
  STATIONS,
  READINGS,
  FAULTS,
  FREE_BYTES,
  /** When something was last heard, UTC microseconds (whole up to 2^53: until the year 2255). */
  HEARD_MICROS,
  /** Not delivered to the plant yet. */
  RECORDS,
  /** How often records began anew, from 1. */
  HISTORIES,
  /** Version of a layout of records less that of the plant. */
  LAYOUTS_AHEAD,
  /** A clock less that of the plant. */
  SECONDS_AHEAD
}
