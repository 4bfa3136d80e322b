package org.chordlog.report.qif;

import org.chordlog.measure.Decision;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;

/**
 * A reading as it goes into the document: {@code decision} is that against the limits in the
 * document, whatever was decided when it was taken; {@code excludedReason} says why it is left out
 * of the statistics, empty where it counts.
 */
public record QifReading(Reading reading, Decision decision, String excludedReason) {
  /** One that counts, decided as when it was taken. */
  public static QifReading of(Reading reading) {
    return new QifReading(reading, reading.decision(), "");
  }

  boolean excluded() {
    return !excludedReason.isEmpty();
  }

  /** A master or a check on the way says nothing of the piece. */
  boolean ofProduct() {
    return reading.circumstances().kind() == ReadingKind.PRODUCT;
  }
}
