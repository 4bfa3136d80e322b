package org.chordlog.stats.control;

import org.chordlog.measure.Check;

/**
 * One reading as the statistics see it. {@code standardUncertainty} is the part that changes from
 * reading to reading (resolution, scatter), in the unit of {@code value}; 0 where not known.
 */
public record Observation(
    long readingId,
    int piece,
    String position,
    long atMicros,
    double value,
    double standardUncertainty) {
  public Observation {
    Check.finite("value", value);
    Check.notNegative("standardUncertainty", standardUncertainty);
  }
}
