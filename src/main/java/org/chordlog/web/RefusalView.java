package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Sentence;
import org.chordlog.station.Announcement;
import org.chordlog.verdict.RefusalWords;

/** A capture that was refused, and why. */
record RefusalView(
    String station,
    CaptureOutcome.Reason reason,
    @JsonPropertyDescription("the reason in words") String words,
    Sentence detail) {
  static RefusalView of(Announcement.Refused refused) {
    CaptureOutcome.Rejected rejection = refused.rejection();
    String words = RefusalWords.of(rejection.reason());
    return new RefusalView(refused.station(), rejection.reason(), words, rejection.detail());
  }
}
