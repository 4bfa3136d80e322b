package org.chordlog.correction;

import org.chordlog.stats.math.Normal;

/**
 * What a correction now would do. {@code exact} is the best amount, with caution for the gain's
 * uncertainty, {@code amount} as much of it as is in reach, to the step of the scale; {@code
 * standardUncertainty} of that part is NaN where the gain is known too badly to state one; {@code
 * saving} what is expected to be saved with each piece to come, in pieces at the limit; {@code
 * chance} the probability that the level improves.
 */
record Choice(
    double exact, double amount, double standardUncertainty, double saving, double chance) {
  /** Beyond it the uncertainty of a quotient can't be propagated linearly. */
  private static final double WELL_KNOWN = 3;

  /** The belief's level is the deviation from what is aimed at. */
  static Choice of(Belief belief, MoveError error, Reach reach) {
    double square = belief.gain() * belief.gain() + belief.gainVariance();
    double pull = belief.level() * belief.gain() + belief.covariance();
    double exact = -pull / square;
    double part = reach.cut(exact);
    double amount = error.scale().rounded(part);
    double uncertainty = part == exact ? uncertainty(belief) : uncertainty(belief) * part / exact;
    double saving = saving(belief, amount) - error.costOfMove(belief);
    double unit = error.halfTolerance() * error.halfTolerance();
    return new Choice(exact, amount, uncertainty, saving / unit, chance(belief));
  }

  /** Φ(|θ|/(2√P)): a move by −θ/b helps if the true level is beyond half the estimate. */
  static double chance(Belief belief) {
    return Normal.below(Math.abs(belief.level()) / (2 * belief.levelUncertainty()));
  }

  /** Fall of the expected square of the level, for each piece to come. */
  private static double saving(Belief belief, double amount) {
    double after = belief.level() + belief.gain() * amount;
    return belief.level() * belief.level()
        - after * after
        - 2 * amount * belief.covariance()
        - amount * amount * belief.gainVariance();
  }

  private static double uncertainty(Belief belief) {
    double b = belief.gain();
    double level = belief.level();
    if (!(Math.abs(b) > WELL_KNOWN * belief.gainUncertainty())) {
      return Double.NaN;
    }
    double variance =
        belief.levelVariance() / (b * b)
            + level * level * belief.gainVariance() / (b * b * b * b)
            - 2 * level * belief.covariance() / (b * b * b);
    return Math.sqrt(Math.max(0, variance));
  }
}
