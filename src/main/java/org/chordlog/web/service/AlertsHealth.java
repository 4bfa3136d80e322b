package org.chordlog.web.service;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.AlertCounts;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Alerts that are not over, and the watch for them. */
record AlertsHealth(
    @JsonPropertyDescription("false where it has not looked for a minute") boolean watching,
    @JsonPropertyDescription("null before the first") @Nullable String lastRound,
    @JsonPropertyDescription("for somebody to acknowledge them") int waiting,
    @JsonPropertyDescription("those that are not over") AlertStates open) {
  static AlertsHealth of(AlertCounts counts) {
    return new AlertsHealth(
        counts.watching(),
        counts.lastRoundMicros() == 0 ? null : Times.iso(counts.lastRoundMicros()),
        counts.waiting(),
        AlertStates.of(counts));
  }

  /** How many alerts there are in each state. */
  record AlertStates(
      int unacknowledged,
      int acknowledged,
      int returnedUnacknowledged,
      int shelved,
      int outOfService) {
    static AlertStates of(AlertCounts counts) {
      return new AlertStates(
          counts.in(AlertState.UNACKNOWLEDGED),
          counts.in(AlertState.ACKNOWLEDGED),
          counts.in(AlertState.RETURNED_UNACKNOWLEDGED),
          counts.in(AlertState.SHELVED),
          counts.in(AlertState.OUT_OF_SERVICE));
    }
  }
}
