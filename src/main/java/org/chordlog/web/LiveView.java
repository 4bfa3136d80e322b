package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.capture.Capture;
import org.chordlog.measure.Length;
import org.chordlog.station.Announcement;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** The newest value of a station; depth and radius are null before a zero or without a job. */
record LiveView(
    String station,
    String at,
    @JsonPropertyDescription("as the indicator shows it") double valueMm,
    @Nullable Double depthMm,
    @Nullable Double radiusMm,
    @JsonPropertyDescription("no bend can be told from a flat, so there is no radius") boolean flat,
    Capture.Phase phase) {
  static LiveView of(Announcement.Live live) {
    Long depthNm = live.depthNm();
    return new LiveView(
        live.station(),
        Times.iso(live.wallMicros()),
        Length.mm(live.valueNm()),
        depthNm == null ? null : Length.mm(depthNm),
        live.radiusMm(),
        live.flat(),
        live.phase());
  }
}
