package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.Exclusion;
import org.chordlog.web.http.Times;

/** A reading taken out of the statistics, or put back. */
record ExclusionView(
    long id,
    long readingId,
    boolean excluded,
    String reason,
    String at,
    String by,
    @JsonPropertyDescription("it counts in another job, and is not taken in again here")
        boolean moved) {
  static ExclusionView of(Exclusion e) {
    return new ExclusionView(
        e.id(),
        e.readingId(),
        e.excluded(),
        e.reason(),
        Times.iso(e.atMicros()),
        e.by(),
        e.moved());
  }
}
