package org.chordlog.capture;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The part of a contact in which the bridge was rocked, signed so that its extreme is the highest:
 * without stray values, without the landing while the plunger rings, and without the lift-off.
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record RockedHeights(double[] places, double[] heights) {
  private static final double LANDING_SECONDS = 0.4;
  private static final double MOST_LANDING_SHARE = 0.25;
  private static final double LANDED_SHARE = 0.9;
  private static final int NEIGHBOURS = 2;
  private static final double LOOK_BACK_SECONDS = 0.04;

  /** Limit of the Hampel filter in robust standard deviations; 3 is its usual value. */
  private static final double HAMPEL = 3;

  private static final double NORMAL_MEDIAN = 0.6745;

  /** {@code leastNm}: what is never a stray value, as a few steps. */
  static RockedHeights of(ContactTrace trace, int sign, double leastNm) {
    int n = trace.size();
    boolean[] kept = new boolean[n];
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = trace.valueNm(i);
    }
    for (int i = 0; i < n; i++) {
      kept[i] = !isStray(values, i, leastNm);
    }
    int from = landed(trace, kept);
    int to = n == 0 ? 0 : liftOff(trace, values, from, leastNm);
    int[] used = IntStream.range(from, to).filter(i -> kept[i]).toArray();
    return new RockedHeights(
        Arrays.stream(used).mapToDouble(i -> i).toArray(),
        Arrays.stream(used).mapToDouble(i -> sign * values[i]).toArray());
  }

  /** Hampel's filter over the two neighbours on either side. */
  private static boolean isStray(double[] values, int at, double leastNm) {
    int from = Math.max(0, at - NEIGHBOURS);
    int to = Math.min(values.length, at + NEIGHBOURS + 1);
    double[] near = Arrays.copyOfRange(values, from, to);
    double middle = Parabola.median(near);
    double[] off = Arrays.stream(near).map(v -> Math.abs(v - middle)).toArray();
    double limit = Math.max(leastNm, HAMPEL * Parabola.median(off) / NORMAL_MEDIAN);
    return Math.abs(values[at] - middle) > limit;
  }

  /** Where the ringing of the landing is over: a while after the plunger first turned back. */
  private static int landed(ContactTrace trace, boolean[] kept) {
    int n = trace.size();
    double deepest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      deepest = kept[i] ? Math.max(deepest, trace.pushedInNm(i)) : deepest;
    }
    int at = 0;
    while (at < n - 1 && (!kept[at] || trace.pushedInNm(at) < LANDED_SHARE * deepest)) {
      at++;
    }
    while (at < n - 1 && trace.pushedInNm(at + 1) > trace.pushedInNm(at)) {
      at++;
    }
    double all = n == 0 ? 0 : trace.seconds(n - 1);
    double until =
        (n == 0 ? 0 : trace.seconds(at)) + Math.min(LANDING_SECONDS, MOST_LANDING_SHARE * all);
    while (at < n - 1 && trace.seconds(at) < until) {
      at++;
    }
    return at;
  }

  /** Where the plunger begins its last way out: from there on it only goes out. */
  private static int liftOff(ContactTrace trace, double[] values, int from, double leastNm) {
    int last = values.length - 1;
    int lookBack = lookBack(trace);
    int higher = higherBefore(values, last, from, lookBack, leastNm / 4);
    while (higher < last) {
      last = higher;
      higher = higherBefore(values, last, from, lookBack, leastNm / 4);
    }
    return last + 1;
  }

  /** So many samples may be stray ones in a row. */
  private static int lookBack(ContactTrace trace) {
    double seconds = trace.seconds(trace.size() - 1);
    return 1 + (int) (LOOK_BACK_SECONDS * trace.size() / Math.max(seconds, LOOK_BACK_SECONDS));
  }

  private static int higherBefore(double[] values, int last, int from, int lookBack, double step) {
    for (int before = last - 1; before >= Math.max(from, last - lookBack); before--) {
      if (middle(values, before) > middle(values, last) + step) {
        return before;
      }
    }
    return last;
  }

  private static double middle(double[] values, int at) {
    int from = Math.max(0, at - NEIGHBOURS);
    int to = Math.min(values.length, at + NEIGHBOURS + 1);
    return Parabola.median(Arrays.copyOfRange(values, from, to));
  }

  int size() {
    return heights.length;
  }
}
