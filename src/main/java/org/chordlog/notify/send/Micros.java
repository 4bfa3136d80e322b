package org.chordlog.notify.send;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** UTC microseconds, as the store has them. */
final class Micros {
  private Micros() {}

  static long of(Instant at) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, at);
  }

  static Instant instant(long micros) {
    return Instant.EPOCH.plus(micros, ChronoUnit.MICROS);
  }
}
