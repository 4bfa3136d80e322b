package org.chordlog.station;

import org.chordlog.measure.ClockState;

/**
 * Compares the wall clock with the steady one; a step is told once, to the next reading. Used by
 * the station's thread alone.
 */
final class ClockWatch {
  /** Smaller steps are drift, as a time service makes it. */
  static final long STEP_MICROS = 500_000;

  /** No wall clock before the release of this program can be right: 2026-11-01 UTC. */
  static final long EARLIEST_MICROS = 1_793_491_200_000_000L;

  /** Told of a step: the wall time that was expected, and the one that was found. */
  interface Listener {
    void stepped(long expectedMicros, long foundMicros);
  }

  private final Listener listener;
  private long offsetMicros;
  private boolean started;
  private boolean stepped;

  ClockWatch(Listener listener) {
    this.listener = listener;
  }

  /** Looks at both clocks, read at the same moment. */
  void look(long wallMicros, long monotonicNanos) {
    long offset = wallMicros - monotonicNanos / 1_000;
    long step = offset - offsetMicros;
    if (started && Math.abs(step) >= STEP_MICROS) {
      stepped = true;
      listener.stepped(wallMicros - step, wallMicros);
    }
    started = true;
    offsetMicros = offset;
  }

  /** State of the clock for a reading taken at that time; a step is told once. */
  ClockState stateAt(long wallMicros) {
    boolean wasStepped = stepped;
    stepped = false;
    if (wallMicros < EARLIEST_MICROS) {
      return ClockState.BEFORE_BUILD;
    }
    return wasStepped ? ClockState.STEPPED : ClockState.STEADY;
  }
}
