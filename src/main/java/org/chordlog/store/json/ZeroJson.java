package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Zero;

/** A zero. */
record ZeroJson(
    @JsonProperty("id") long id,
    @JsonProperty("station") String station,
    @JsonProperty("bridgeId") long bridgeId,
    @JsonProperty("valueNm") long valueNm,
    @JsonProperty("scatterNm") long scatterNm,
    @JsonProperty("sampleCount") int sampleCount,
    @JsonProperty("takenAtMicros") long takenAtMicros,
    @JsonProperty("takenBy") String takenBy) {
  static ZeroJson of(Zero zero) {
    return new ZeroJson(
        zero.id(),
        zero.station(),
        zero.bridgeId(),
        zero.valueNm(),
        zero.scatterNm(),
        zero.sampleCount(),
        zero.takenAtMicros(),
        zero.takenBy());
  }

  Zero zero() {
    return new Zero(
        id,
        station,
        bridgeId,
        valueNm,
        scatterNm,
        sampleCount,
        new Recorded(takenAtMicros, takenBy));
  }
}
