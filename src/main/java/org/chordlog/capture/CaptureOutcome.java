package org.chordlog.capture;

import org.chordlog.measure.CapturedDepth;

/** What a capture says: a depth taken, or a refusal that is counted and shown. */
public sealed interface CaptureOutcome {
  /** A depth was taken. */
  record Captured(CapturedDepth depth) implements CaptureOutcome {}

  /** No depth was taken, and why. */
  record Rejected(Reason reason, long monotonicNanos, String detail) implements CaptureOutcome {}

  /** Why a capture was refused. */
  enum Reason {
    MOVED,
    TOO_SHORT,
    OUTSIDE_TRAVEL,
    WRONG_FACE,
    FLAT,
    NOT_ZEROED,
    STALE_ZERO,
    GAP,
    STUCK,
    UNIT_CHANGED,
    NO_JOB,
    JOB_CLOSED,
    ON_MASTERS,
    NO_BRIDGE,
    NO_PIECE,
    FREE_AIR,
    REPEATED
  }
}
