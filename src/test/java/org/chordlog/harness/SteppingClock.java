package org.chordlog.harness;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.station.StationClock;

/** The clocks of this computer, the wall clock set forward or back at will. */
public final class SteppingClock implements StationClock {
  private final StationClock real = StationClock.system();
  private final AtomicLong offsetMicros = new AtomicLong();

  /** Negative: back. */
  public void step(Duration by) {
    offsetMicros.addAndGet(TimeUnit.NANOSECONDS.toMicros(by.toNanos()));
  }

  @Override
  public long wallMicros() {
    return real.wallMicros() + offsetMicros.get();
  }

  @Override
  public long monotonicNanos() {
    return real.monotonicNanos();
  }
}
