package org.chordlog.correction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What may lie behind a reading: a belief before it, the reading's variance, its probability. */
record Hypothesis(double chance, Belief before, double variance) {
  /** The level stayed, it jumped, the reading is astray, or a move was not recorded. */
  static List<Hypothesis> behind(
      PieceInput piece,
      Belief belief,
      double variance,
      Tuning.Surprises odds,
      double halfTolerance) {
    double silent = piece.silentMove() == 0 ? 0 : odds.silentChance();
    double steady = 1 - odds.jumpChance() - odds.strayChance() - silent;
    Belief jumped = belief.widened(square(odds.jump() * halfTolerance));
    List<Hypothesis> all = new ArrayList<>(4);
    all.add(new Hypothesis(steady, belief, variance));
    all.add(new Hypothesis(odds.jumpChance(), jumped, variance));
    all.add(new Hypothesis(odds.strayChance(), belief, odds.strayFactor() * variance));
    if (silent > 0) {
      all.add(new Hypothesis(silent, movedUnrecorded(piece, belief), variance));
    }
    return all;
  }

  /** Nobody said how far the rollers were moved, so the reading teaches nothing of the gain. */
  private static Belief movedUnrecorded(PieceInput piece, Belief belief) {
    double ofGain = square(piece.silentMove()) * belief.gainVariance();
    return belief.shifted(belief.gain() * piece.silentMove(), ofGain + piece.silentVariance());
  }

  private static double square(double value) {
    return value * value;
  }

  private double logWeight(double reading) {
    double total = before.levelVariance() + variance;
    double innovation = reading - before.level();
    return Math.log(chance) - Math.log(total) / 2 - innovation * innovation / (2 * total);
  }

  /** The belief after a reading, all hypotheses collapsed to one Gaussian, and their weights. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Heard(Belief belief, double[] weights) {}

  /** First-order generalised pseudo-Bayes: one Gaussian after each reading. */
  static Heard hear(List<Hypothesis> all, double reading) {
    double[] weights = all.stream().mapToDouble(each -> each.logWeight(reading)).toArray();
    double most = Arrays.stream(weights).max().orElseThrow();
    double sum = 0;
    for (int k = 0; k < weights.length; k++) {
      weights[k] = Math.exp(weights[k] - most);
      sum += weights[k];
    }
    for (int k = 0; k < weights.length; k++) {
      weights[k] /= sum;
    }
    List<Belief> after =
        all.stream().map(each -> each.before.heard(reading, each.variance)).toList();
    return new Heard(Belief.mixture(after, weights), weights);
  }
}
