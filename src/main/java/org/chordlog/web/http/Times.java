package org.chordlog.web.http;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import org.chordlog.measure.BadInput;

/** Stored microseconds as the ISO 8601 text of the API, in UTC. */
public final class Times {
  private Times() {}

  public static String iso(long micros) {
    return Instant.EPOCH.plus(micros, ChronoUnit.MICROS).toString();
  }

  /** Throws {@link BadInput} naming the field. */
  public static long read(String field, String iso) {
    try {
      return micros(Instant.parse(iso));
    } catch (DateTimeParseException | ArithmeticException e) {
      throw new BadInput(field, iso, "is not a time", "as 2026-05-04T00:00:00Z");
    }
  }

  /**
   * Whole microseconds since 1970 in UTC, what is finer cut off; throws ArithmeticException beyond
   * the years that a long holds.
   */
  public static long micros(Instant instant) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, instant);
  }
}
