package org.chordlog.verdict;

import java.util.Locale;
import org.chordlog.measure.Decimals;

/** The interval of a creep's slope in words, alike in alerts and at the machine. */
final class SlopeInterval {
  private static final double PERCENT = 100;

  private SlopeInterval() {}

  /**
   * Relative changes of curvature per 100 pieces, in either order: without signs and the slower
   * first where both say the same direction, else as changes of curvature.
   */
  static String words(double oneEnd, double otherEnd) {
    double one = PERCENT * oneEnd;
    double other = PERCENT * otherEnd;
    return one * other < 0
        ? Decimals.signed(one, 2) + " to " + Decimals.signed(other, 2) + " % of curvature"
        : String.format(
            Locale.ROOT,
            "%.2f to %.2f %%",
            Math.min(Math.abs(one), Math.abs(other)),
            Math.max(Math.abs(one), Math.abs(other)));
  }
}
