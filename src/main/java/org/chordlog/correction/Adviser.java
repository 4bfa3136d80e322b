package org.chordlog.correction;

import org.chordlog.correction.Advice.Direction;
import org.chordlog.correction.Advice.LeaveReason;
import org.chordlog.stats.math.Normal;
import org.jspecify.annotations.Nullable;

/** From what is believed to what is said. The belief's level is the plain deviation, permil. */
record Adviser(Situation situation, Tuning.Stakes stakes) {
  /** More pieces than that are not announced. */
  private static final int MANY_PIECES = 99;

  /** {@code level}: what to aim at, permil; {@code toCome}: pieces that a correction counts for. */
  record Goal(Aim aim, double level, int toCome) {}

  /** Variances, permil squared: of the pieces about their level, of a measured piece. */
  record Variances(double pieces, double measured) {}

  /** All that advice rests on. */
  record Situation(
      Goal goal,
      MachineScale scale,
      RollerSetting setting,
      Reach reach,
      Belief belief,
      Variances variances) {
    Aim aim() {
      return goal.aim();
    }

    Belief fromAim() {
      return belief.shifted(-goal.level(), 0);
    }

    LevelEstimate level() {
      return LevelEstimate.of(aim(), belief.level(), belief.levelUncertainty());
    }

    MoveError moveError() {
      return new MoveError(scale, aim().halfTolerance());
    }
  }

  Choice choice() {
    return Choice.of(situation.fromAim(), situation.moveError(), situation.reach());
  }

  Advice advise() {
    return situation.belief().blind() ? withoutAmount() : withAmount();
  }

  private Advice withoutAmount() {
    Belief belief = situation.fromAim();
    double unit = situation.aim().halfTolerance();
    double worth = stakes.pieces() * belief.level() * belief.level() / (unit * unit);
    if (!(worth > stakes.correction())) {
      return new Advice.Leave(situation.level(), LeaveReason.WORTH_LESS_THAN_A_CORRECTION);
    }
    return Choice.chance(belief) < stakes.leastChance() ? tooEarly(belief) : amountUnknown(belief);
  }

  private Advice amountUnknown(Belief belief) {
    double to = situation.aim().radiusMm(situation.goal().level());
    LevelEstimate level = situation.level();
    return new Advice.AmountUnknown(
        level,
        belief.level() < 0 ? Direction.TIGHTER : Direction.MORE_OPEN,
        Math.abs(to - level.radiusMm()),
        level.standardUncertaintyMm());
  }

  private Advice withAmount() {
    Choice choice = choice();
    if (worthIt(choice)) {
      return choice.chance() < stakes.leastChance()
          ? tooEarly(situation.fromAim())
          : correct(choice);
    }
    return new Advice.Leave(situation.level(), whyLeave(choice));
  }

  boolean worthIt(Choice choice) {
    return choice.amount() != 0
        && situation.goal().toCome() * choice.saving() > stakes.correction();
  }

  private LeaveReason whyLeave(Choice choice) {
    if (choice.amount() == 0 && choice.exact() != 0) {
      return LeaveReason.LESS_THAN_A_STEP;
    }
    return stakes.pieces() * choice.saving() > stakes.correction()
        ? LeaveReason.JOB_NEARLY_DONE
        : LeaveReason.WORTH_LESS_THAN_A_CORRECTION;
  }

  /** Until Φ(|θ|/(2√P)) would reach the least chance, with P falling as R/n. */
  private Advice tooEarly(Belief belief) {
    double quantile = 2 * Normal.quantile(stakes.leastChance());
    double inverse =
        quantile * quantile / (belief.level() * belief.level()) - 1 / belief.levelVariance();
    double pieces = Math.ceil(situation.variances().measured() * inverse);
    int more = (int) Math.max(1, Math.min(MANY_PIECES, pieces));
    return new Advice.TooEarly(situation.level(), more, Advice.Since.PIECE);
  }

  private Advice correct(Choice choice) {
    return new Advice.Correct(situation.level(), situation.scale(), move(choice), prospect(choice));
  }

  private Advice.Move move(Choice choice) {
    MachineScale scale = situation.scale();
    RollerSetting setting = situation.setting();
    double onScale = scale.rounded(setting.onScale(choice.amount(), scale.lostMotion()));
    double u = choice.standardUncertainty();
    return new Advice.Move(
        onScale,
        Double.isNaN(u) ? null : (Double) u,
        known(setting.number()),
        known(setting.number() + onScale),
        choice.amount() * situation.belief().gain() > 0 ? Direction.TIGHTER : Direction.MORE_OPEN);
  }

  private static @Nullable Double known(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }

  /** Afterwards the level is as uncertain as the gain makes so long a move. */
  private Advice.Prospect prospect(Choice choice) {
    Belief before = situation.belief();
    Belief after = before.moved(choice.amount(), situation.moveError().variance(before));
    return new Advice.Prospect(
        situation.aim().radiusMm(after.level()), out(before), out(after), choice.chance());
  }

  private double out(Belief belief) {
    double variance = belief.levelVariance() + situation.variances().pieces();
    return Outside.share(situation.aim(), belief.level(), Math.sqrt(variance));
  }
}
