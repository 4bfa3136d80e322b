package org.chordlog.profile;

/** A piece, or a part of a touch, with its result or with why it has none. */
public sealed interface PieceOutcome {
  /** The part of the run that is the piece. */
  Part part();

  /** It was evaluated. */
  record Measured(Part part, PieceResult result) implements PieceOutcome {}

  /** It gives no reading. */
  record NotMeasured(Part part, Refused why) implements PieceOutcome {}
}
