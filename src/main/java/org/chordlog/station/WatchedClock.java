package org.chordlog.station;

import org.chordlog.measure.ClockState;
import org.chordlog.measure.Incident;

/**
 * The wall clock as a station sees it; a step of it becomes an incident. Any thread may read the
 * clocks; {@link #microsAt} and {@link #stateAt} are for the station's thread alone.
 */
final class WatchedClock {
  /** Two clocks read so far apart, on a busy machine, can't be compared. */
  private static final long TOO_FAR_APART_NANOS = 50_000_000;

  private final String station;
  private final StationContext around;
  private final ClockWatch watch = new ClockWatch(this::stepped);

  WatchedClock(String station, StationContext around) {
    this.station = station;
    this.around = around;
  }

  long nanos() {
    return around.clock().monotonicNanos();
  }

  long micros() {
    return around.clock().wallMicros();
  }

  /** Wall time at that monotonic time, which may be some time ago: the station may have stalled. */
  long microsAt(long nanos) {
    long before = nanos();
    long wall = micros();
    long between = nanos() - before;
    long now = before + between / 2;
    if (between < TOO_FAR_APART_NANOS) {
      watch.look(wall, now);
    }
    return wall - (now - nanos) / 1_000;
  }

  ClockState stateAt(long wallMicros) {
    return watch.stateAt(wallMicros);
  }

  private void stepped(long expectedMicros, long foundMicros) {
    String detail = "The computer's clock was set.";
    Incident.Kind kind = Incident.Kind.CLOCK_STEPPED;
    around.incidents().add(new Incident(0, station, kind, expectedMicros, foundMicros, 0, detail));
  }
}
