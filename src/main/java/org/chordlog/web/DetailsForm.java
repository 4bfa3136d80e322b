package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.OrderDetails;
import org.jspecify.annotations.Nullable;

/** What an order says besides its limits; each may be left out. */
record DetailsForm(
    @Nullable String customer,
    @Nullable String drawingRevision,
    @JsonPropertyDescription("length of the bent arc along the centreline")
        @Nullable Double developedLengthMm,
    @Nullable Double developedAngleDegrees) {
  OrderDetails details() {
    return new OrderDetails(
        orNull(customer), orNull(drawingRevision), developedLengthMm, developedAngleDegrees);
  }

  static DetailsForm of(OrderDetails d) {
    return new DetailsForm(
        d.customer(), d.drawingRevision(), d.developedLengthMm(), d.developedAngleDegrees());
  }

  private static @Nullable String orNull(@Nullable String text) {
    return text == null || text.isBlank() ? null : text.strip();
  }
}
