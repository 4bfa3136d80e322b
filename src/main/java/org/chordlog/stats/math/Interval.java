package org.chordlog.stats.math;

/** A value with its confidence limits. */
public record Interval(double value, double lower, double upper) {
  /** The level of every interval that is not named otherwise. */
  public static final double CONFIDENCE = 0.95;
}
