package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** Where the scale is by what was recorded, and what moves have shown of lost motion. */
final class RollerMoves {
  /** Settings closer than that are the same, where the scale's step is not known. */
  private static final double SAME_SETTING = 1e-9;

  private static final double MOSTLY_STRAY = 0.5;

  /** Numbers on the scale that do not follow from each other. */
  record Gap(double expected, double found) {
    double amount() {
      return found - expected;
    }
  }

  private RollerSetting setting = RollerSetting.unknown();
  private LostMotion lostMotion = LostMotion.none();

  /** What the rollers moved by until a piece has shown its effect; 0: nothing. */
  private double untested;

  private boolean reversed;
  private @Nullable Gap gap;

  /** The largest amount that what one unit does was learned from, in the scale's unit. */
  private double tried;

  RollerSetting setting() {
    return setting;
  }

  /** The newest correction's, null where its numbers follow from the one before. */
  @Nullable Gap gap() {
    return gap;
  }

  LostMotion.@Nullable Found lostMotion() {
    return lostMotion.found();
  }

  double tried() {
    return tried;
  }

  /** Something was learned of the scale from a move by that. */
  void learnedFrom(double amount) {
    tried = Math.max(tried, Math.abs(amount));
  }

  /** A set-up, to that number. */
  void begin(RollerSetting now) {
    setting = now;
    gap = null;
    untested = 0;
  }

  /** Another scale. */
  void beginAnew() {
    begin(RollerSetting.unknown());
    lostMotion = LostMotion.none();
    tried = 0;
  }

  /** The effect of the newest move can't be told from something else. */
  void untestable() {
    untested = 0;
  }

  /** Before a correction: {@code before} NaN where it was not read. */
  @Nullable Gap compare(double before, MachineScale scale) {
    Gap found = new Gap(setting.number(), before);
    gap = Math.abs(found.amount()) > Math.max(scale.step(), SAME_SETTING) ? found : null;
    return gap;
  }

  /** What the rollers moved by, lost motion taken away. */
  double moved(double before, double amount, MachineScale scale) {
    double effective = setting.effective(amount, scale.lostMotion());
    reversed = setting.reverses(amount);
    setting = setting.moved(before, amount);
    untested = effective;
    return effective;
  }

  /** The first piece after a move shows its effect. */
  void test(NewestReading newest, Belief belief) {
    if (untested != 0 && newest.stray() < MOSTLY_STRAY && !belief.blind()) {
      lostMotion =
          lostMotion.with(
              untested, reversed, newest.innovation(), newest.forecastVariance(), belief.gain());
    }
    untested = 0;
  }

  void write(Packer to) {
    setting.write(to);
    lostMotion.write(to);
    to.put(untested).put(reversed).put(tried).put(gap != null);
    if (gap != null) {
      to.put(gap.expected()).put(gap.found());
    }
  }

  void read(Unpacker from) {
    setting = RollerSetting.read(from);
    lostMotion = LostMotion.read(from);
    untested = from.aDouble();
    reversed = from.aBoolean();
    tried = from.aDouble();
    gap = from.aBoolean() ? new Gap(from.aDouble(), from.aDouble()) : null;
  }
}
