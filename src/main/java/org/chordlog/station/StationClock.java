package org.chordlog.station;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** The clocks of the stations: UTC microseconds, and monotonic nanoseconds that never step. */
public interface StationClock {
  long wallMicros();

  long monotonicNanos();

  /** The clocks of this computer. */
  static StationClock system() {
    return new StationClock() {
      @Override
      public long wallMicros() {
        return ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now());
      }

      @Override
      public long monotonicNanos() {
        return System.nanoTime();
      }
    };
  }
}
