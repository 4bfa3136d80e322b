package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Map;
import java.util.TreeMap;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Sentence;
import org.chordlog.station.StationStatus;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** A station as it stands. */
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
        @Nullable Sentence question) {
  static StationView of(StationStatus s) {
    StationStatus.Counts counts = s.counts();
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
        s.doubt(),
        s.question());
  }
}
