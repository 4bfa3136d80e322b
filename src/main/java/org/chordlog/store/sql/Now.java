package org.chordlog.store.sql;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Wall time as stored. */
public final class Now {
  private Now() {}

  public static long micros() {
    return ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now());
  }
}
