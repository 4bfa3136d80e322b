package org.chordlog.report.qif;

import org.chordlog.measure.Reading;

/**
 * A reading as it goes into the document: the material lot of its piece, empty if unknown, and why
 * it is left out of the statistics, empty where it counts.
 */
public record QifReading(Reading reading, String materialLot, String excludedReason) {
  boolean excluded() {
    return !excludedReason.isEmpty();
  }

  /** It has a radius and is not excluded. */
  boolean counts() {
    return !excluded() && !reading.radius().flat();
  }
}
