package org.chordlog.web;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Stored microseconds as the ISO 8601 text of the API, in UTC. */
final class Times {
  private Times() {}

  static String iso(long micros) {
    return Instant.EPOCH.plus(micros, ChronoUnit.MICROS).toString();
  }

  static long micros(Instant instant) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, instant);
  }
}
