package org.chordlog.capture;

/** Middle of the last three values, so that one stray value moves nothing. */
final class Median {
  private long before;
  private long last;
  private int known;

  long of(long value) {
    long result = known < 2 ? value : middle(before, last, value);
    before = last;
    last = value;
    known = Math.min(known + 1, 2);
    return result;
  }

  void clear() {
    known = 0;
  }

  private static long middle(long a, long b, long c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
