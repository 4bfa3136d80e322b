package org.chordlog.study;

import org.jspecify.annotations.Nullable;

/** A judgement by a figure's whole interval, never by the figure alone. */
public enum StudyVerdict {
  /** The whole interval is on the good side of the limit. */
  PASSES("good enough"),
  /** The limit is inside the interval, or there is no interval. */
  UNDECIDED("undecided"),
  /** The whole interval is on the bad side of the limit. */
  FAILS("not good enough");

  private final String words;

  StudyVerdict(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** An absent end is unbounded. */
  static StudyVerdict atMost(@Nullable Double lower, @Nullable Double upper, double limit) {
    if (upper != null && upper <= limit) {
      return PASSES;
    }
    return lower != null && lower > limit ? FAILS : UNDECIDED;
  }

  static StudyVerdict atLeast(@Nullable Double lower, @Nullable Double upper, double limit) {
    if (lower != null && lower >= limit) {
      return PASSES;
    }
    return upper != null && upper < limit ? FAILS : UNDECIDED;
  }

  StudyVerdict worse(StudyVerdict other) {
    if (this == FAILS || other == FAILS) {
      return FAILS;
    }
    return this == UNDECIDED || other == UNDECIDED ? UNDECIDED : PASSES;
  }
}
