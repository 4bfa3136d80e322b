package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * Whether moves that reverse the direction fall short of the others: sums of weights, and of
 * weighted shortfalls in the scale's unit, of both kinds.
 */
record LostMotion(double reversals, double reversalSum, double others, double otherSum) {
  static LostMotion none() {
    return new LostMotion(0, 0, 0, 0);
  }

  /** Lost motion about that, the scale's unit. */
  record Found(double amount, double standardUncertainty) {}

  /**
   * The first piece after a move was off its forecast by {@code innovation}, permil, of that
   * variance.
   */
  LostMotion with(
      double amount, boolean reversed, double innovation, double variance, double gain) {
    double shortfall = -innovation * Math.signum(amount) / gain;
    double weight = gain * gain / variance;
    return reversed
        ? new LostMotion(reversals + weight, reversalSum + weight * shortfall, others, otherSum)
        : new LostMotion(reversals, reversalSum, others + weight, otherSum + weight * shortfall);
  }

  /** Null unless the difference exceeds twice its standard uncertainty. */
  @Nullable Found found() {
    if (reversals == 0 || others == 0) {
      return null;
    }
    double lost = reversalSum / reversals - otherSum / others;
    double uncertainty = Math.sqrt(1 / reversals + 1 / others);
    return lost > 2 * uncertainty ? new Found(lost, uncertainty) : null;
  }

  void write(Packer to) {
    to.put(reversals).put(reversalSum).put(others).put(otherSum);
  }

  static LostMotion read(Unpacker from) {
    return new LostMotion(from.aDouble(), from.aDouble(), from.aDouble(), from.aDouble());
  }
}
