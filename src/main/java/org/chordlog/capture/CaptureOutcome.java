package org.chordlog.capture;

import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sentence;

/** What a capture says: a depth taken, or a refusal that is counted and shown. */
public sealed interface CaptureOutcome {
  /** A depth was taken. */
  record Captured(CapturedDepth depth) implements CaptureOutcome {}

  /** No depth was taken, and why. */
  record Rejected(Reason reason, long monotonicNanos, Sentence detail) implements CaptureOutcome {
    /** In words that hold no length. */
    public Rejected(Reason reason, long monotonicNanos, String detail) {
      this(reason, monotonicNanos, Sentence.plain(detail));
    }
  }

  /**
   * Later in the contact the plunger rested longer, at another value than the depth taken: offered
   * in its place.
   */
  record Offered(CapturedDepth depth, long takenNm) implements CaptureOutcome {}

  /** The depth taken in this contact was no rest: the value went on moving. */
  record Withdrawn(long takenNm, long monotonicNanos, Sentence detail) implements CaptureOutcome {}

  /** Why a capture was refused. */
  enum Reason {
    MOVED,
    VIBRATES,
    TOO_SHORT,
    OUTSIDE_TRAVEL,
    WRONG_FACE,
    FLAT,
    FAR_FROM_TARGET,
    SETTING_CHANGED,
    NOT_ZEROED,
    STALE_ZERO,
    ZERO_OF_OTHER_BRIDGE,
    GAP,
    STUCK,
    UNIT_CHANGED,
    NO_JOB,
    JOB_CLOSED,
    ON_MASTERS,
    STUDY_COMPLETE,
    STUDY_NEXT_DAY,
    NO_BRIDGE,
    NO_PIECE,
    FREE_AIR,
    REPEATED,
    RUNS_THROUGH,
    PIECE_TOO_SHORT,
    NO_FULL_BEND,
    PIECES_NOT_TOLD,
    LENGTH_DEAD,
    LENGTH_REVERSED,
    LENGTH_JUMPED,
    NO_LENGTH,
    FREE_AIR_UNKNOWN
  }
}
