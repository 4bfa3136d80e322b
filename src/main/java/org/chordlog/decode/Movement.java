package org.chordlog.decode;

/** Whether, how far and how steadily the values of one channel moved; in nanometres. */
final class Movement {
  /** A hand that pushes a plunger moves it further than this; noise does not. */
  private static final long LEAST_NM = 100_000;

  private static final int LEAST_STEPS = 10;

  /** Mean step by range of a plunger pushed by hand, and of values without order (1/3). */
  private static final double STEADY = 0.13;

  private static final double WILD = 0.33;
  private long count;
  private long last;
  private long least = Long.MAX_VALUE;
  private long most = Long.MIN_VALUE;
  private long stepNm;
  private double path;
  private boolean fell;

  void add(long nm) {
    if (count++ > 0) {
      long change = Math.abs(nm - last);
      path += change;
      fell |= nm < last;
      stepNm = divisor(stepNm, change);
    }
    last = nm;
    least = Math.min(least, nm);
    most = Math.max(most, nm);
  }

  /** The greatest common divisor: the step of the last digit. */
  private static long divisor(long a, long b) {
    long rest = b;
    long divisor = a;
    while (rest != 0) {
      long next = divisor % rest;
      divisor = rest;
      rest = next;
    }
    return divisor;
  }

  long rangeNm() {
    return count == 0 ? 0 : most - least;
  }

  /** Whether it moved further than noise does. */
  boolean moved() {
    return rangeNm() >= Math.max(LEAST_NM, LEAST_STEPS * stepNm);
  }

  /** Whether it only ever rose, as a counter or a time does. */
  boolean onlyRose() {
    return !fell && rangeNm() > 0;
  }

  /**
   * 1 for values that follow each other as a hand moves them, down to 0.1 for those in no order.
   */
  double steadiness() {
    if (count < 3 || rangeNm() == 0) {
      return 0.1;
    }
    double step = path / (count - 1) / rangeNm();
    return Math.max(0.1, Math.min(1, (WILD - step) / (WILD - STEADY)));
  }
}
