package org.chordlog.notify.rule;

import org.jspecify.annotations.Nullable;

/**
 * What is known of a station: its link (lost since a time, with what the station says of it), and
 * its gauge. {@code working}: a job is open at it.
 */
public record StationFacts(String station, boolean working, Link link, Gauge gauge) {
  /** {@code sinceMicros}: when it came into its state. */
  public record Link(boolean lost, long sinceMicros, String message) {}

  /**
   * The gauge with its present bridge; null where it is not known. {@code failed}: the newest check
   * if it failed; {@code calibrationDueMicros}: of the calibration in force.
   */
  public record Gauge(
      @Nullable FailedCheck failed,
      @Nullable Long calibrationDueMicros,
      boolean zeroStale,
      @Nullable Long zeroMicros) {}

  /** {@code deviationMm}: null where no radius was measured on that master. */
  public record FailedCheck(@Nullable Double deviationMm, double masterMm, long readingsInDoubt) {}
}
