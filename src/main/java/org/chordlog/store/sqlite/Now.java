package org.chordlog.store.sqlite;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Wall time as stored. */
final class Now {
  private Now() {}

  static long micros() {
    return ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now());
  }
}
