package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * The number on the scale, NaN if not known, and the way of the last move: 1 to higher numbers, −1
 * to lower ones, 0 if not known.
 */
record RollerSetting(double number, int way) {
  static RollerSetting unknown() {
    return new RollerSetting(Double.NaN, 0);
  }

  boolean known() {
    return !Double.isNaN(number);
  }

  boolean reverses(double amount) {
    return way != 0 && Math.signum(amount) == -way;
  }

  /** What the rollers move by when the scale does by that amount. */
  double effective(double onScale, double lostMotion) {
    double lost = reverses(onScale) ? Math.min(lostMotion, Math.abs(onScale)) : 0;
    return onScale - Math.signum(onScale) * lost;
  }

  /** What the scale has to move by for the rollers to. */
  double onScale(double effective, double lostMotion) {
    return reverses(effective) ? effective + Math.signum(effective) * lostMotion : effective;
  }

  /** {@code before} NaN where it was not read. */
  RollerSetting moved(double before, double amount) {
    double from = Double.isNaN(before) ? number : before;
    return new RollerSetting(from + amount, amount == 0 ? way : (int) Math.signum(amount));
  }

  void write(Packer to) {
    to.put(number).put(way);
  }

  static RollerSetting read(Unpacker from) {
    return new RollerSetting(from.aDouble(), from.anInt());
  }
}
