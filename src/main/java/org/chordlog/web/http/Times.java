package org.chordlog.web.http;

import java.time.Instant;
import java.time.ZoneOffset;
import org.chordlog.measure.TimeText;

/** Stored microseconds as the ISO 8601 text of the API, in UTC. */
public final class Times {
  /** Of a query that begins then, in the document. */
  public static final String FROM =
      "ISO 8601, with an offset or in UTC: not before that time; of a day alone its beginning";

  /** Of a query that ends then. */
  public static final String TO =
      "ISO 8601, with an offset or in UTC: not after that time; of a day alone its end";

  /** Of a field. */
  public static final String AT =
      "a time: ISO 8601, or day.month.year and a time of day; in UTC where no offset is written";

  private Times() {}

  public static String iso(long micros) {
    return TimeText.iso(micros);
  }

  /** As {@link TimeText} reads it, without an offset in UTC. */
  public static long read(String field, String text) {
    return TimeText.micros(field, text, ZoneOffset.UTC);
  }

  /** The same of a last moment: a day alone is meant to its end. */
  public static long readLast(String field, String text) {
    return TimeText.lastMicros(field, text, ZoneOffset.UTC);
  }

  /**
   * Whole microseconds since 1970 in UTC, what is finer cut off; throws ArithmeticException beyond
   * the years that a long holds.
   */
  public static long micros(Instant instant) {
    return TimeText.micros(instant);
  }
}
