package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.Length;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Zero;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** A zero taken on a flat. */
record ZeroView(
    long id,
    String station,
    long bridgeId,
    @JsonPropertyDescription(
            "grows as the plunger is pushed in: of the other sign than what an indicator shows that"
                + " counts down")
        double valueMm,
    double scatterMm,
    int sampleCount,
    String takenAt,
    String takenBy,
    @JsonPropertyDescription("what free air says against it, in words; null where nothing")
        @Nullable Sentence doubt) {
  static ZeroView of(Zero z, @Nullable Sentence doubt) {
    return new ZeroView(
        z.id(),
        z.station(),
        z.bridgeId(),
        Length.mm(z.valueNm()),
        Length.mm(z.scatterNm()),
        z.sampleCount(),
        Times.iso(z.takenAtMicros()),
        z.takenBy(),
        doubt);
  }
}
