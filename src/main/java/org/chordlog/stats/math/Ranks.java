package org.chordlog.stats.math;

/**
 * The value of a place in ascending order, found without sorting all (Hoare 1961, Communications of
 * the ACM 4, 321-322). The order of the values is changed.
 */
public final class Ranks {
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
    int from = 0;
    int to = values.length - 1;
    while (from < to) {
      int last = part(values, from, to);
      from = place > last ? last + 1 : from;
      to = place > last ? to : last;
    }
    return values[place];
  }

  /** Puts the lesser of these first; the last place of those, which is before {@code to}. */
  private static int part(double[] values, int from, int to) {
    double parting = middle(values[from], values[(from + to) >>> 1], values[to]);
    int low = from - 1;
    int high = to + 1;
    while (true) {
      do {
        low++;
      } while (values[low] < parting);
      do {
        high--;
      } while (values[high] > parting);
      if (low >= high) {
        return high;
      }
      double moved = values[low];
      values[low] = values[high];
      values[high] = moved;
    }
  }

  private static double middle(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
