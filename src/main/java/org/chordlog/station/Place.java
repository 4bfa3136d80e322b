package org.chordlog.station;

import org.chordlog.measure.Check;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Reading;

/**
 * Where the next reading belongs: a piece of the job, a position on it, and how often the piece has
 * been rolled by then, from 1. Piece 0 without a job.
 */
public record Place(int piece, String position, int pass) {
  public Place {
    Check.within("pass", pass, 1, Integer.MAX_VALUE);
  }

  /** In the first pass. */
  public Place(int piece, String position) {
    this(piece, position, 1);
  }

  static Place first(Plan plan) {
    return new Place(1, plan.positions().get(0));
  }

  static Place of(Reading reading) {
    return new Place(reading.piece(), reading.position(), reading.circumstances().pass());
  }

  /** The next position on the piece, or the first one on the next piece. */
  Place after(Plan plan) {
    int next = plan.positions().indexOf(position) + 1;
    return next < plan.positions().size()
        ? new Place(piece, plan.positions().get(next), pass)
        : nextPiece(plan);
  }

  Place nextPiece(Plan plan) {
    return new Place(piece + 1, plan.positions().get(0));
  }

  /** The same piece, with a position that the plan still has. */
  Place on(Plan plan) {
    return plan.positions().contains(position)
        ? this
        : new Place(piece, plan.positions().get(0), pass);
  }
}
