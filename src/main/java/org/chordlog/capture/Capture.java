package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * A state machine over samples, whose values grow as the plunger is pushed in. Time comes only from
 * its arguments. One thread calls it.
 */
public interface Capture {
  /** Takes in the next sample; what comes of it goes to the sink at once. */
  void offer(Sample sample, Consumer<CaptureOutcome> sink);

  /**
   * Takes the rest that lasts now or else the next one, on behalf of a button, a foot switch, the
   * API or the page. {@code asker} is told exactly once what came of it, at the latest after the
   * time-out of the settings.
   */
  void trigger(long monotonicNanos, Consumer<CaptureOutcome> asker);

  /** Tells what is shown in free air from now on, after the indicator's zero was moved. */
  void freeAirIs(long levelNm);

  /**
   * Tells how large the standard error of a mean may be by vibration, where the tolerance of the
   * job permits more than the indicator's permissible error; 0 where no tolerance is known. It
   * holds from the next sample on.
   *
   * @param standardErrorNm nanometres of depth
   */
  void meanMayErrBy(long standardErrorNm);

  /** Tells that nothing came until that time. */
  void elapsed(long monotonicNanos);

  /** Forgets what it saw, after a gap in the stream. */
  void reset();

  /**
   * Number of the sample that completed the rest which may be taken later, when the plunger leaves;
   * 0 where there is none.
   */
  default long remembers() {
    return 0;
  }

  /** What is shown in free air; null until it was seen since the stream began or broke off. */
  @Nullable Long freeAirNm();

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
