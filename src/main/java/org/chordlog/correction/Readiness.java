package org.chordlog.correction;

import org.jspecify.annotations.Nullable;

/**
 * How far a set-up is: pieces since then, the capability of the pieces about their level with an
 * ideal set-up, trial pieces that {@link TrialPieces#ASKED} needs (null if no number is enough),
 * how many of them are still to come, and the probability that the next piece is out of tolerance.
 */
public record Readiness(
    int pieces,
    double capability,
    @Nullable Integer piecesNeeded,
    @Nullable Integer piecesToCome,
    double nextOut) {
  /** Before so many pieces their scatter is a guess from the tolerance. */
  private static final int ENOUGH = 5;

  /** One plain sentence or two. */
  public String text() {
    String next =
        "Chance that the next piece is out of tolerance: " + AdviceText.percent(nextOut) + ".";
    if (pieces < ENOUGH) {
      return "How many trial pieces it takes is known after " + ENOUGH + ". " + next;
    }
    if (piecesToCome == null) {
      return "However the rollers are set, these pieces vary too much for a Cp of "
          + TrialPieces.ASKED
          + ". "
          + next;
    }
    return piecesToCome == 0
        ? "Trial pieces done: the level is known well enough. " + next
        : "About " + piecesToCome + " more trial pieces. " + next;
  }
}
