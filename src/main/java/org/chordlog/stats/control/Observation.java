package org.chordlog.stats.control;

import org.chordlog.measure.Check;

/**
 * One reading as the statistics see it. {@code standardUncertainty} is the part that is new at each
 * placing of the gauge (resolution, scatter, skew), in the unit of {@code value}; {@code bias} what
 * the value is known to be off by in the mean of placings, too large if positive; 0 where not
 * known.
 */
public record Observation(
    long readingId,
    int piece,
    String position,
    long atMicros,
    double value,
    double standardUncertainty,
    double bias) {
  public Observation {
    Check.finite("value", value);
    Check.notNegative("standardUncertainty", standardUncertainty);
    Check.finite("bias", bias);
  }

  /** One without a known bias. */
  public Observation(
      long readingId,
      int piece,
      String position,
      long atMicros,
      double value,
      double standardUncertainty) {
    this(readingId, piece, position, atMicros, value, standardUncertainty, 0);
  }
}
