package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.stats.capability.Figure;
import org.jspecify.annotations.Nullable;

/** One figure with its name in words, interval, method and source. */
record FigureView(
    String name,
    @JsonPropertyDescription("as printed") String title,
    @JsonPropertyDescription("what it says, in plain words") String meaning,
    @JsonPropertyDescription("null where the data can't give it; the method says why")
        @Nullable Double value,
    @Nullable Double lower,
    @Nullable Double upper,
    @JsonPropertyDescription("of the interval, 0.95 for 95 %") @Nullable Double confidence,
    String unit,
    String method,
    String source) {
  static FigureView of(Figure f) {
    return new FigureView(
        f.name(),
        f.kind().title(),
        f.kind().meaning(),
        f.value(),
        f.lower(),
        f.upper(),
        f.confidence(),
        f.unit(),
        f.method(),
        f.source());
  }
}
