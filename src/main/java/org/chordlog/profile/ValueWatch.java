package org.chordlog.profile;

import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * Watches a depth against the length: a depth that moves while the length does not, or that does
 * not move at all while the piece does.
 */
final class ValueWatch {
  private static final long STANDING_NM = 2_000_000;
  private static final long STANDING_NANOS = 1_000_000_000L;
  private static final long UNCHANGED_NM = 100_000_000;

  private final long stepNm;
  private long anchorNanos;
  private long anchorNm = Long.MIN_VALUE;
  private long leastNm;
  private long mostNm;
  private long deepestNm;
  private long valueNm = Long.MIN_VALUE;
  private long sinceNm;

  ValueWatch(long stepNm) {
    this.stepNm = stepNm;
  }

  /** A fault of the length, or null. */
  @Nullable Refused at(long placeNm, long nanos, long depthNm) {
    deepestNm = Math.max(deepestNm, Math.abs(depthNm));
    if (anchorNm == Long.MIN_VALUE || Math.abs(placeNm - anchorNm) >= STANDING_NM) {
      anchorNm = placeNm;
      anchorNanos = nanos;
      leastNm = depthNm;
      mostNm = depthNm;
      return null;
    }
    leastNm = Math.min(leastNm, depthNm);
    mostNm = Math.max(mostNm, depthNm);
    boolean stood = nanos - anchorNanos >= STANDING_NANOS;
    return stood && mostNm - leastNm > Math.max(deepestNm / 5, 20 * stepNm) ? dead() : null;
  }

  private Refused dead() {
    return new Refused(
        Refused.Reason.LENGTH_DEAD,
        Sentence.of(
            "The depth moved by %s while the length stood still at %s: the length's source is"
                + " dead, or the bridge was lifted.",
            Quantity.fixed(Length.mm(mostNm - leastNm), 2),
            Quantity.fixed(Length.mm(anchorNm), 0)));
  }

  /** No values came for a while: what was seen before says nothing of what comes. */
  void interrupted() {
    anchorNm = Long.MIN_VALUE;
    valueNm = Long.MIN_VALUE;
  }

  /** Tells, once a run of the same value over more than 100 mm has ended. */
  void unchanged(long placeNm, long depthNm, PieceFeed feed) {
    if (depthNm == valueNm) {
      return;
    }
    if (valueNm != Long.MIN_VALUE && Math.abs(placeNm - sinceNm) > UNCHANGED_NM) {
      feed.note(
          new ProfileEvent(
              ProfileEvent.Kind.UNCHANGED,
              Math.min(sinceNm, placeNm),
              Math.abs(placeNm - sinceNm)));
    }
    valueNm = depthNm;
    sinceNm = placeNm;
  }
}
