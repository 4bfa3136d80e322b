package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Locale;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Sentence;
import org.chordlog.station.Announcement;

/** A capture that was refused, and why. */
record RefusalView(
    String station,
    CaptureOutcome.Reason reason,
    @JsonPropertyDescription("the reason in words") String words,
    Sentence detail) {
  static RefusalView of(Announcement.Refused refused) {
    CaptureOutcome.Rejected rejection = refused.rejection();
    String words = rejection.reason().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    return new RefusalView(refused.station(), rejection.reason(), words, rejection.detail());
  }
}
