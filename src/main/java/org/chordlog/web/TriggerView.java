package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Sentence;
import org.chordlog.station.TriggerAnswer;
import org.chordlog.verdict.RefusalWords;
import org.jspecify.annotations.Nullable;

/** What came of a request for a reading: the reading, or why there is none. */
record TriggerView(
    @JsonPropertyDescription("the reading, committed; null when refused, or taken for a study")
        @Nullable ReadingView reading,
    @JsonPropertyDescription("why it was refused; null when taken")
        CaptureOutcome.@Nullable Reason refused,
    @JsonPropertyDescription("the reason in words") String words,
    Sentence detail,
    @JsonPropertyDescription("what to do") String advice) {
  static TriggerView of(TriggerAnswer answer) {
    if (answer instanceof TriggerAnswer.Taken taken) {
      return new TriggerView(ReadingView.of(taken.reading()), null, "", Sentence.EMPTY, "");
    }
    if (answer instanceof TriggerAnswer.Studied) {
      return new TriggerView(null, null, "Taken for the study.", Sentence.EMPTY, "");
    }
    CaptureOutcome.Rejected rejected = ((TriggerAnswer.Refused) answer).rejection();
    return new TriggerView(
        null,
        rejected.reason(),
        RefusalWords.of(rejected.reason()),
        rejected.detail(),
        RefusalWords.advice(rejected.reason()));
  }
}
