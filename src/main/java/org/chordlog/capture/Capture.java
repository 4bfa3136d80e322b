package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.measure.Sample;

/**
 * A state machine over samples, whose values grow as the plunger is pushed in. Time comes only from
 * the samples. One thread calls it.
 */
public interface Capture {
  void offer(Sample sample, Consumer<CaptureOutcome> sink);

  /** Takes a reading now, on behalf of a button, a foot switch, the API or the page. */
  void trigger(long monotonicNanos, Consumer<CaptureOutcome> sink);

  /** Forgets what it saw, after a gap in the stream. */
  void reset();

  /** Where the plunger is thought to be. */
  Phase phase();

  /** Phases of one contact. */
  enum Phase {
    FREE,
    MOVING,
    RESTING,
    TAKEN
  }
}
