package org.chordlog.capture;

import org.chordlog.measure.CapturedDepth;
import org.jspecify.annotations.Nullable;

/**
 * The steadiest rest of a contact that has lasted the least time, but not yet half as long again:
 * taken when the plunger leaves before. Not where the contact rested at two values, since either
 * may be the right one, nor where the rest is a small part of the contact, as a crest is of
 * something that runs past.
 */
final class ShortRest {
  /** A contact is at most so many times as long as its rest. */
  private static final int MOST_RESTS = 5;

  /** Four standard deviations of the difference of two means. */
  private static final double STANDARD_ERRORS = 4 * Math.sqrt(2);

  private final long bandNm;
  private @Nullable CapturedDepth steadiest;
  private long spreadNm;
  private long spanNanos;
  private boolean atTwoValues;

  ShortRest(CaptureSettings settings) {
    bandNm = settings.bandNm();
  }

  void clear() {
    steadiest = null;
    atTwoValues = false;
  }

  /** The newest samples are such a rest. */
  void lasts(Rests rests, CapturedDepth depth) {
    CapturedDepth before = steadiest;
    atTwoValues |=
        before != null
            && Math.abs(depth.valueNm() - before.valueNm())
                > Math.max((double) bandNm, byNoiseNm(rests));
    if (before == null || rests.restSpreadNm() <= spreadNm) {
      steadiest = depth;
      spreadNm = rests.restSpreadNm();
      spanNanos = rests.spanNanos();
    }
  }

  /**
   * How far apart the means of two stretches of one rest may be by the scatter that a tolerance
   * permits.
   */
  private static double byNoiseNm(Rests rests) {
    double standardError = rests.restNoiseNm() / Math.sqrt(rests.count());
    return rests.toleranceDecides()
        ? STANDARD_ERRORS * Math.min(standardError, (double) rests.meanMayErrNm())
        : 0;
  }

  /** Null where there is none in a contact of that length that may be taken. */
  @Nullable CapturedDepth taken(long contactNanos) {
    return atTwoValues || contactNanos > MOST_RESTS * spanNanos ? null : steadiest;
  }

  boolean atTwoValues() {
    return atTwoValues;
  }

  /** Number of the sample that completed it; 0 where there is none. */
  long lastSequence() {
    CapturedDepth depth = steadiest;
    return depth == null ? 0 : depth.lastSequence();
  }
}
