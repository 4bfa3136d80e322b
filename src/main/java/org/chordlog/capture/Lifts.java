package org.chordlog.capture;

import org.jspecify.annotations.Nullable;

/**
 * The turning points of a stream: highest while the plunger is in, lowest while it is out. A turn
 * counts when the value has come back by as much as a contact.
 */
final class Lifts {
  private final long contactNm;
  private boolean started;
  private boolean out = true;
  private long lowest;
  private long highest;
  private @Nullable Long bottomNm;
  private @Nullable Long endedNm;

  Lifts(long contactNm) {
    this.contactNm = contactNm;
  }

  /** True when the plunger is pushed in after it was out. */
  boolean offer(long valueNm) {
    if (!started) {
      started = true;
      lowest = valueNm;
      highest = valueNm;
    }
    return out ? rises(valueNm) : falls(valueNm);
  }

  private boolean rises(long valueNm) {
    lowest = Math.min(lowest, valueNm);
    if (valueNm <= lowest + contactNm) {
      return false;
    }
    out = false;
    highest = valueNm;
    endedNm = bottomNm;
    bottomNm = null;
    return true;
  }

  private boolean falls(long valueNm) {
    highest = Math.max(highest, valueNm);
    if (valueNm < highest - contactNm) {
      out = true;
      lowest = valueNm;
    }
    return false;
  }

  /** Whether the plunger is on its way in, or is in. */
  boolean isIn() {
    return !out;
  }

  /** Whether a rest there is the lowest of this lift. */
  boolean atBottom(long meanNm, long toleranceNm) {
    return out && meanNm <= lowest + toleranceNm;
  }

  void rested(long meanNm) {
    bottomNm = meanNm;
  }

  /** Where the plunger rested in the lift that has ended; null if nowhere. */
  @Nullable Long takeBottom() {
    Long taken = endedNm;
    endedNm = null;
    return taken;
  }
}
