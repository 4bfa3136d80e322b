package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** What was advised, whether it was followed, and whether it helped. */
final class Following {
  /** Newest advised amount that was neither recorded nor followed by a piece; 0: none. */
  private double advised;

  private double chance;

  /** What was advised before the newest piece and not recorded; 0: nothing. */
  private double unrecorded;

  private Promises promises = Promises.none();

  double advised() {
    return advised;
  }

  double unrecorded() {
    return unrecorded;
  }

  Promises promises() {
    return promises;
  }

  void advise(Advice advice) {
    advised = 0;
    if (advice instanceof Advice.Correct correct) {
      advised = correct.move().amount();
      chance = correct.prospect().chance();
    }
  }

  /** Something happened that the advice was not about. */
  void outdated() {
    advised = 0;
  }

  /** The level moved for another reason. */
  void interrupted() {
    promises = promises.close();
  }

  /** A recorded correction; {@code off}: level less what is aimed at, before it, permil. */
  void corrected(double amount, double off) {
    boolean followed = advised * amount > 0;
    promises = followed ? promises.open(off, chance) : promises.close();
  }

  /** A piece comes; {@code sincePiece}: nothing was recorded since the one before. */
  void pieceComes(boolean sincePiece) {
    unrecorded = sincePiece ? advised : 0;
  }

  /** Its deviation from what is aimed at, permil. */
  void piece(double off) {
    promises = promises.piece(off);
  }

  void write(Packer to) {
    to.put(advised).put(chance).put(unrecorded);
    promises.write(to);
  }

  void read(Unpacker from) {
    advised = from.aDouble();
    chance = from.aDouble();
    unrecorded = from.aDouble();
    promises = Promises.read(from);
  }
}
