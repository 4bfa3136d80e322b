package org.chordlog.capture;

import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Length;

/** Refuses a depth beyond the indicator's travel, where its data sheet promises nothing. */
final class Travel {
  private Travel() {}

  static CaptureOutcome judged(CapturedDepth depth, long pushedInNm, CaptureSettings settings) {
    if (pushedInNm <= settings.plunger().travelNm()) {
      return new Captured(depth);
    }
    String detail =
        Length.mm(pushedInNm)
            + " mm from free air; travel "
            + Length.mm(settings.plunger().travelNm())
            + " mm";
    return new Rejected(Reason.OUTSIDE_TRAVEL, depth.monotonicNanos(), detail);
  }
}
