package org.chordlog.report;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Wall time as text: ISO 8601, UTC, to the microsecond. */
public final class UtcTime {
  private UtcTime() {}

  public static String text(long micros) {
    return Instant.EPOCH.plus(micros, ChronoUnit.MICROS).toString();
  }
}
