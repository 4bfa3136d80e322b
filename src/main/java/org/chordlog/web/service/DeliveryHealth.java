package org.chordlog.web.service;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.forward.ForwardState;
import org.chordlog.forward.ForwardStatus;
import org.chordlog.store.FeedPage;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** The delivery of what is recorded here to the database of the plant. */
record DeliveryHealth(
    ForwardState state,
    @JsonPropertyDescription("why nothing is delivered now; empty where it is") String problem,
    @JsonPropertyDescription("readings that the plant does not have yet") long readingsWaiting,
    @JsonPropertyDescription("these and changed records") long rowsWaiting,
    @JsonPropertyDescription("when the first of these readings was taken; null without any")
        @Nullable String waitingSince,
    @JsonPropertyDescription("when the last of them was taken; null without any")
        @Nullable String newestWaiting,
    @JsonPropertyDescription("null before the first delivery") @Nullable String lastDelivered) {
  static DeliveryHealth of(ForwardStatus now) {
    FeedPage.Rest rest = now.rest();
    return new DeliveryHealth(
        now.state(),
        now.problem(),
        rest.readings(),
        rest.rows(),
        time(rest.firstMicros()),
        time(rest.lastMicros()),
        time(now.lastDeliveredMicros()));
  }

  private static @Nullable String time(long micros) {
    return micros == 0 ? null : Times.iso(micros);
  }
}
