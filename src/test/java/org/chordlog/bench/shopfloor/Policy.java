package org.chordlog.bench.shopfloor;

/** How somebody corrects during one job. Amounts are in units of the machine's scale. */
public interface Policy {
  /** A measured piece: radius as read, and what only some policies may know. */
  record Seen(int piece, double radiusMm, double trueLevelPermil, double thumb) {
    double permil() {
      return 1000 * (org.chordlog.simulator.DemoBend.TARGET_MM / radiusMm - 1);
    }
  }

  /** A recorded lot begins: what to move before its first piece. */
  default double lot(int name) {
    return 0;
  }

  /** What to move by after a piece; 0: nothing. */
  double measured(Seen piece);

  /** The rollers were moved by that much on the scale; {@code recorded}: somebody wrote it down. */
  default void moved(double before, double amount, boolean recorded) {}

  /** True levels before and after what was done, permil: for judging statements. */
  default void outcome(double before, double after) {}

  /** Whether its moves have no error. */
  default boolean exact() {
    return false;
  }
}
