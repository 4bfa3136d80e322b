package org.chordlog.correction;

import org.chordlog.measure.Check;

/**
 * What a reading near the start of a piece says of the rest of it. A piece's own deviation
 * (setting, yield strength; standard deviation {@code common}) is alike over its length, the rest
 * ({@code along}) is not; {@code reading} is the reading's standard uncertainty, {@code level} that
 * of the level. Any unit, the same for all.
 */
record StartOfBend(double common, double along, double reading, double level) {
  StartOfBend {
    Check.notNegative("common", common);
    Check.notNegative("along", along);
    Check.notNegative("reading", reading);
    Check.notNegative("level", level);
  }

  /** Share of the reading's deviation from what was expected that the rest will have too. */
  double share() {
    double shared = sharedVariance();
    double total = shared + along * along + reading * reading;
    return total > 0 ? shared / total : 0;
  }

  /**
   * Variance of the rest of the piece about what is expected of it, after a move with that standard
   * uncertainty; 0 without a move.
   */
  double restVariance(double move) {
    return sharedVariance() * (1 - share()) + along * along + move * move;
  }

  private double sharedVariance() {
    return level * level + common * common;
  }

  /**
   * Least bent length that a bridge can measure behind the rollers: from the middle roller to the
   * exit roller, and the span. A bridge between the rollers sees the bend under load.
   */
  static double firstMeasurableMm(double halfDistanceMm, double spanMm) {
    return Check.positive("halfDistanceMm", halfDistanceMm) + Check.positive("spanMm", spanMm);
  }
}
