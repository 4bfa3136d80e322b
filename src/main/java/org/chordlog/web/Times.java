package org.chordlog.web;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import org.chordlog.measure.BadInput;

/** Stored microseconds as the ISO 8601 text of the API, in UTC. */
final class Times {
  private Times() {}

  static String iso(long micros) {
    return Instant.EPOCH.plus(micros, ChronoUnit.MICROS).toString();
  }

  /** Throws {@link BadInput} naming the field. */
  static long read(String field, String iso) {
    try {
      return micros(Instant.parse(iso));
    } catch (DateTimeParseException e) {
      throw new BadInput(field, iso, "is no time", "as 2026-05-04T00:00:00Z");
    }
  }

  static long micros(Instant instant) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, instant);
  }
}
