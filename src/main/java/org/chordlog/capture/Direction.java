package org.chordlog.capture;

/** What an indicator shows while its plunger is pushed in. */
public enum Direction {
  COUNTS_UP(1),
  COUNTS_DOWN(-1);

  private final int sign;

  Direction(int sign) {
    this.sign = sign;
  }

  /** That value with the sign that grows as the plunger is pushed in. */
  public long inwardNm(long shownNm) {
    return sign * shownNm;
  }

  /** What the indicator shows for a value that grows as the plunger is pushed in. */
  public long shownNm(long inwardNm) {
    return sign * inwardNm;
  }
}
