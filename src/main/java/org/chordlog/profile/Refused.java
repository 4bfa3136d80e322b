package org.chordlog.profile;

import org.chordlog.measure.Sentence;

/** Why a piece that ran through gives no reading, with one sentence for the operator. */
public record Refused(Reason reason, Sentence detail) {
  /** In words that hold no length. */
  Refused(Reason reason, String detail) {
    this(reason, Sentence.plain(detail));
  }

  /** The kinds of it. */
  public enum Reason {
    /** Not long enough for both feet to stand on it, or for a bend between two straight ends. */
    PIECE_TOO_SHORT,
    /** Nowhere bent evenly for long enough. */
    NO_FULL_BEND,
    /** Straight, as far as can be told. */
    NO_BEND,
    /** Bent the other way than the face says. */
    WRONG_FACE,
    /** Longer than a piece is said to be, and no joint was seen in it. */
    PIECES_NOT_TOLD,
    /** The depth moved and the length did not. */
    LENGTH_DEAD,
    /** The piece went in backwards by its length. */
    LENGTH_REVERSED,
    /** The length jumped. */
    LENGTH_JUMPED,
    /** No length that can be relied on. */
    NO_LENGTH,
    /** The plunger was at the end of its travel. */
    OUTSIDE_TRAVEL,
    /** The stream broke off in the middle of the piece. */
    GAP,
    /** Free air was not known when the piece came. */
    FREE_AIR_UNKNOWN
  }
}
