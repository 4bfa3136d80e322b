package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/** What a status text of an indicator means. */
public enum StatusMeaning {
  OK(null),
  OVER_RANGE(Decoded.Status.Kind.OVER_RANGE),
  UNDER_RANGE(Decoded.Status.Kind.UNDER_RANGE),
  LOW_BATTERY(Decoded.Status.Kind.LOW_BATTERY),
  ERROR(Decoded.Status.Kind.ERROR),
  /** Moving: a value beside it is still a value. */
  UNSTABLE(Decoded.Status.Kind.UNSTABLE);

  private final Decoded.Status.@Nullable Kind kind;

  StatusMeaning(Decoded.Status.@Nullable Kind kind) {
    this.kind = kind;
  }

  Decoded.Status.@Nullable Kind kind() {
    return kind;
  }

  boolean leavesValue() {
    return this == OK || this == UNSTABLE;
  }
}
