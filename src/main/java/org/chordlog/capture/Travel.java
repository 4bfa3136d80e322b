package org.chordlog.capture;

import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/** Refuses a depth beyond the indicator's travel, where its data sheet promises nothing. */
final class Travel {
  private Travel() {}

  static CaptureOutcome judged(CapturedDepth depth, long pushedInNm, CaptureSettings settings) {
    if (pushedInNm <= settings.plunger().travelNm()) {
      return new Captured(depth);
    }
    Sentence detail =
        Sentence.of(
            "%s from free air; travel %s",
            Quantity.stated(Length.mm(pushedInNm)),
            Quantity.stated(Length.mm(settings.plunger().travelNm())));
    return new Rejected(Reason.OUTSIDE_TRAVEL, depth.monotonicNanos(), detail);
  }
}
