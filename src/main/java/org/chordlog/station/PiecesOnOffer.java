package org.chordlog.station;

import java.util.List;

/**
 * From which pieces on those of a job may go to another one, the newest alone first. {@code
 * lastReadingId} is the newest reading of the job: a move is refused once another one came.
 */
public record PiecesOnOffer(long lastReadingId, List<From> choices) {
  static final int MOST = 50;

  public PiecesOnOffer {
    choices = List.copyOf(choices);
  }

  /** A piece and all after it, with how many readings go. */
  public record From(int firstPiece, int lastPiece, int readings) {
    private static From of(NewestPieces pieces) {
      return new From(pieces.firstPiece(), pieces.lastPiece(), pieces.all().size());
    }
  }

  static PiecesOnOffer of(long lastReadingId, List<NewestPieces> choices) {
    return new PiecesOnOffer(lastReadingId, choices.stream().map(From::of).toList());
  }
}
