package org.chordlog.correction;

import org.chordlog.correction.LotShifts.Shift;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The level at the end of a lot, until the next one has shown where it is: what the rollers were
 * moved by since, and how many pieces it has had.
 */
record LotWatch(String from, double level, double variance, double moved, int pieces) {
  static final int ENOUGH = 8;

  static LotWatch begin(String from, Belief end) {
    return new LotWatch(from, end.level(), end.levelVariance(), 0, 0);
  }

  LotWatch movedBy(double amount) {
    return new LotWatch(from, level, variance, moved + amount, pieces);
  }

  LotWatch piece() {
    return new LotWatch(from, level, variance, moved, pieces + 1);
  }

  /** The shift once there were pieces enough, else null. */
  @Nullable Shift found(Belief now, Aim aim, String section, String to) {
    if (pieces < ENOUGH) {
      return null;
    }
    double step = now.level() - now.gain() * moved - level;
    double unit = aim.perMm(1);
    return new Shift(
        section, from, to, step * unit, (now.levelVariance() + variance) * unit * unit);
  }

  void write(Packer to) {
    to.put(from).put(level).put(variance).put(moved).put(pieces);
  }

  static LotWatch read(Unpacker from) {
    return new LotWatch(from.text(), from.aDouble(), from.aDouble(), from.aDouble(), from.anInt());
  }
}
