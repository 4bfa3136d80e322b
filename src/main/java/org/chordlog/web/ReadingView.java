package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Length;
import org.chordlog.measure.Mark;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.store.KeptReading;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** A reading as the API shows it. */
record ReadingView(
    @JsonPropertyDescription("order of commit over all stations") long id,
    String station,
    long stationSequence,
    long jobId,
    int piece,
    String position,
    @JsonPropertyDescription("ISO 8601, UTC") String at,
    @JsonPropertyDescription("relative to the zero, positive on a convex face") double depthMm,
    double depthScatterMm,
    int sampleCount,
    CaptureMode captureMode,
    @JsonPropertyDescription("on the specified face; null when it can't be told from flat")
        @Nullable Double radiusMm,
    @JsonPropertyDescription(
            "lower end of the 95.45 % interval; of a flat, the largest radius told")
        double lowerMm,
    @JsonPropertyDescription("upper end; null when open towards flat") @Nullable Double upperMm,
    double curvaturePerMm,
    double coverageFactor,
    @JsonPropertyDescription("against the limits in force now") Decision decision,
    @JsonPropertyDescription("against the limits in force when it was taken")
        Decision decisionAtTime,
    @JsonPropertyDescription("revision of the limits when it was taken; null if not recorded")
        @Nullable Integer revision,
    @JsonPropertyDescription("how often the piece had been rolled, from 1") int pass,
    @Nullable String measuredBy,
    @Nullable String materialLot,
    @JsonPropertyDescription("why it is excluded from the statistics; null where it counts")
        @Nullable String excludedReason,
    List<Mark> marks,
    ClockState clock,
    @JsonPropertyDescription("the last frame as sent") String rawHex,
    long setUpId,
    long firstSampleSequence,
    long lastSampleSequence) {

  /** As taken a moment ago: the limits are those in force, and it counts. */
  static ReadingView of(Reading reading) {
    return of(new KeptReading(reading, null), reading.decision());
  }

  static ReadingView of(KeptReading kept, Decision now) {
    Reading r = kept.reading();
    RadiusEstimate radius = r.radius();
    return new ReadingView(
        r.id(),
        r.station(),
        r.stationSequence(),
        r.jobId(),
        r.piece(),
        r.position(),
        Times.iso(r.wallMicros()),
        Length.mm(r.depthNm()),
        Length.mm(r.captured().scatterNm()),
        r.captured().sampleCount(),
        r.captured().mode(),
        radius.radiusMm(),
        radius.lowerMm(),
        radius.upperMm(),
        radius.curvaturePerMm(),
        radius.coverageFactor(),
        now,
        r.decision(),
        r.circumstances().revision(),
        r.circumstances().pass(),
        r.circumstances().measuredBy(),
        r.circumstances().materialLot(),
        kept.excludedReason(),
        r.marks().stream().sorted().toList(),
        r.clock(),
        r.rawHex(),
        r.setUpId(),
        r.captured().firstSequence(),
        r.captured().lastSequence());
  }
}
