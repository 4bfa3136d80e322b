package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Map;
import java.util.TreeMap;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Sentence;
import org.chordlog.station.OpenQuestion;
import org.chordlog.station.StationStatus;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** A station and its state now. */
record StationView(
    String station,
    String machine,
    StationStatus.LinkState link,
    @JsonPropertyDescription("a sentence for the operator") String message,
    @JsonPropertyDescription("the port or address") String target,
    String since,
    @JsonPropertyDescription("what the indicator says instead of a number; null when it measures")
        @Nullable String indicatorState,
    long samples,
    long damagedFrames,
    long readings,
    long pendingReadings,
    long droppedReadings,
    long droppedSamples,
    long reopenings,
    Map<CaptureOutcome.Reason, Long> rejections,
    @Nullable Long jobId,
    int piece,
    String position,
    @JsonPropertyDescription("how often the piece has been rolled by then, from 1") int pass,
    @JsonPropertyDescription("whether masters are measured instead of pieces") boolean onMasters,
    @JsonPropertyDescription("the study that is running instead of a job; else null")
        StationStatus.@Nullable StudyNow study,
    @JsonPropertyDescription("who measures; null until somebody says so") @Nullable String person,
    @Nullable Long bridgeId,
    @Nullable Long zeroId,
    boolean zeroStale,
    @JsonPropertyDescription("the indicator's zero moved after it was taken") boolean zeroMoved,
    @JsonPropertyDescription("what the stream shows that can't be, with what to do; else null")
        @Nullable Sentence doubt,
    @JsonPropertyDescription("what the operator is asked about the last depth; else null")
        @Nullable Sentence question,
    @JsonPropertyDescription(
            "what it asks, which says how it is answered: FAR_FROM_TARGET by confirm (a piece of"
                + " the job), another with a job (a piece of that one) or decline (no piece);"
                + " LATER_REST by confirm (in place of the first), another (counts at the next"
                + " place) or decline (neither); else null")
        OpenQuestion.@Nullable Kind questionKind,
    @JsonPropertyDescription("the link of the length along the feed; null without one of its own")
        @Nullable LengthView length) {
  /** The link on which the length along the feed comes. */
  record LengthView(
      StationStatus.LinkState link,
      @JsonPropertyDescription("a sentence for the operator") String message,
      @JsonPropertyDescription("the port or address") String target,
      String since,
      @JsonPropertyDescription("whether depths have lengths now; without, pieces give no reading")
          boolean known,
      @JsonPropertyDescription("how many ms later depths come than their counts") double delayMs,
      @JsonPropertyDescription("standard uncertainty of a delay that was found")
          @Nullable Double delayUncertaintyMs,
      StationStatus.DelayOrigin delayOrigin,
      @JsonPropertyDescription("whether the next piece run forth and back is to tell the delay")
          boolean findingDelay,
      @JsonPropertyDescription("what came of that, or what to do; empty if never asked")
          String delaySaid,
      @JsonPropertyDescription("whether counts come, in words") String linkWords,
      @JsonPropertyDescription("the delay in words, with what came of looking for it")
          String delayWords) {
    static @Nullable LengthView of(StationStatus.@Nullable LengthNow now) {
      if (now == null) {
        return null;
      }
      StationStatus.DelayNow delay = now.delay();
      return new LengthView(
          now.link(),
          now.message(),
          now.target(),
          Times.iso(now.sinceMicros()),
          now.known(),
          delay.ms(),
          delay.uncertaintyMs(),
          delay.origin(),
          delay.searching(),
          delay.said(),
          LengthWords.link(now),
          LengthWords.delay(delay));
    }
  }

  static StationView of(StationStatus s) {
    StationStatus.Counts counts = s.counts();
    @Nullable OpenQuestion question = s.question();
    return new StationView(
        s.station(),
        s.machine(),
        s.link(),
        s.message(),
        s.target(),
        Times.iso(s.sinceMicros()),
        s.indicatorState(),
        counts.samples(),
        counts.damagedFrames(),
        counts.readings(),
        counts.pendingReadings(),
        counts.droppedReadings(),
        counts.droppedSamples(),
        counts.reopenings(),
        new TreeMap<>(counts.rejections()),
        s.jobId(),
        s.piece(),
        s.position(),
        s.place().pass(),
        s.place().onMasters(),
        s.place().study(),
        s.place().person(),
        s.bridgeId(),
        s.zeroId(),
        s.zeroStale(),
        s.zeroMoved(),
        s.doubt() == null ? null : s.doubt().words(),
        question == null ? null : question.sentence(),
        question == null ? null : question.kind(),
        LengthView.of(s.length()));
  }
}
