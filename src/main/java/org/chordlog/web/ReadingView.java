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
    Decision decision,
    List<Mark> marks,
    ClockState clock,
    @JsonPropertyDescription("the last frame as sent") String rawHex,
    long setUpId,
    long firstSampleSequence,
    long lastSampleSequence) {

  static ReadingView of(Reading r) {
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
        r.decision(),
        r.marks().stream().sorted().toList(),
        r.clock(),
        r.rawHex(),
        r.setUpId(),
        r.captured().firstSequence(),
        r.captured().lastSequence());
  }
}
