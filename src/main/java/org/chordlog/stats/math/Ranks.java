package org.chordlog.stats.math;

import org.apache.commons.math3.util.KthSelector;

/**
 * The value of a place in ascending order, found without sorting all. The order of the values is
 * changed.
 */
public final class Ranks {
  private static final KthSelector SELECTOR = new KthSelector();
  private static final int[] NO_PIVOTS_KEPT = {};

  private Ranks() {}

  /** At least one value. */
  public static double median(double[] values) {
    int middle = values.length / 2;
    double upper = select(values, middle);
    if (values.length % 2 == 1) {
      return upper;
    }
    double lower = select(values, middle - 1);
    return lower + 0.5 * (upper - lower);
  }

  /** The value that would be at that place, from 0, if all were sorted. */
  public static double select(double[] values, int place) {
    return SELECTOR.select(values, NO_PIVOTS_KEPT, place);
  }
}
