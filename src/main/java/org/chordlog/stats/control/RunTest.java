package org.chordlog.stats.control;

import java.util.Locale;
import org.chordlog.stats.control.Signal.Side;
import org.jspecify.annotations.Nullable;

/**
 * The eight tests of Nelson (1984), Journal of Quality Technology 16(4), 237-239, in his order.
 * Each sees standardised points from {@code start} to the end of the array, the last one newest.
 */
public enum RunTest {
  BEYOND_LIMIT(1, 1, 0, "%d point beyond 3 sigma") {
    @Override
    @Nullable Side broken(double[] z, int start, int count) {
      return sameSide(z, start, count, 3);
    }
  },
  SAME_SIDE(2, 9, 0, "%d points in a row on one side of the centre") {
    @Override
    @Nullable Side broken(double[] z, int start, int count) {
      return sameSide(z, start, count, 0);
    }
  },
  TREND(3, 6, 0, "%d points in a row rising or falling") {
    @Override
    @Nullable Side broken(double[] z, int start, int count) {
      return rising(z, start, 1) ? Side.ABOVE : rising(z, start, -1) ? Side.BELOW : null;
    }
  },
  ALTERNATING(4, 14, 0, "%d points in a row alternating up and down") {
    @Override
    @Nullable Side broken(double[] z, int start, int count) {
      for (int i = start + 2; i < z.length; i++) {
        if (!((z[i] - z[i - 1]) * (z[i - 1] - z[i - 2]) < 0)) {
          return null;
        }
      }
      return Side.BOTH;
    }
  },
  NEAR_LIMIT(5, 2, 1, "%d of %d points beyond 2 sigma on one side") {
    @Override
    @Nullable Side broken(double[] z, int start, int count) {
      return sameSide(z, start, count, 2);
    }
  },
  OFF_CENTRE(6, 4, 1, "%d of %d points beyond 1 sigma on one side") {
    @Override
    @Nullable Side broken(double[] z, int start, int count) {
      return sameSide(z, start, count, 1);
    }
  },
  HUGGING(7, 15, 0, "%d points in a row within 1 sigma") {
    @Override
    @Nullable Side broken(double[] z, int start, int count) {
      for (int i = start; i < z.length; i++) {
        if (!(Math.abs(z[i]) < 1)) {
          return null;
        }
      }
      return Side.BOTH;
    }
  },
  AVOIDING(8, 8, 0, "%d points in a row beyond 1 sigma on both sides") {
    @Override
    @Nullable Side broken(double[] z, int start, int count) {
      int above = beyond(z, start, 1, 1);
      int below = beyond(z, start, 1, -1);
      return above > 0 && below > 0 && above + below == count ? Side.BOTH : null;
    }
  };

  static final RunTest[] ALL = values();
  static final int LONGEST = 30;
  private final int number;
  private final int usualCount;
  private final int spare;
  private final String wording;

  RunTest(int number, int usualCount, int spare, String wording) {
    this.number = number;
    this.usualCount = usualCount;
    this.spare = spare;
    this.wording = wording;
  }

  /** Nelson's number, 1 to 8. */
  public int number() {
    return number;
  }

  /** By its number in Nelson (1984), 1 to 8. */
  public static RunTest numbered(int number) {
    return ALL[number - 1];
  }

  /** The count that Nelson gives. */
  public int usualCount() {
    return usualCount;
  }

  /** Points looked at for a count. */
  public int window(int count) {
    return count + spare;
  }

  /** What breaks the test, in words. */
  public String describe(int count) {
    return String.format(Locale.ROOT, wording, count, window(count));
  }

  /** The side on which the window breaks the test, or null. */
  abstract @Nullable Side broken(double[] z, int start, int count);

  private static @Nullable Side sameSide(double[] z, int start, int count, double limit) {
    double newest = z[z.length - 1];
    if (newest > limit) {
      return beyond(z, start, limit, 1) >= count ? Side.ABOVE : null;
    }
    return newest < -limit && beyond(z, start, limit, -1) >= count ? Side.BELOW : null;
  }

  private static int beyond(double[] z, int start, double limit, int sign) {
    int count = 0;
    for (int i = start; i < z.length; i++) {
      count += sign * z[i] > limit ? 1 : 0;
    }
    return count;
  }

  private static boolean rising(double[] z, int start, int sign) {
    for (int i = start + 1; i < z.length; i++) {
      if (!(sign * (z[i] - z[i - 1]) > 0)) {
        return false;
      }
    }
    return true;
  }
}
