package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * What an order says besides its limits; each may be missing. The developed length is that of the
 * bent arc along the centreline, the developed angle the one it turns through (more than 360 for a
 * coil).
 */
public record OrderDetails(
    @Nullable String customer,
    @Nullable String drawingRevision,
    @Nullable Double developedLengthMm,
    @Nullable Double developedAngleDegrees) {
  public static final OrderDetails NONE = new OrderDetails(null, null, null, null);

  public OrderDetails {
    if (customer != null) {
      Check.text("customer", customer);
    }
    if (drawingRevision != null) {
      Check.text("drawingRevision", drawingRevision);
    }
    if (developedLengthMm != null) {
      Check.positive("developedLengthMm", developedLengthMm);
    }
    if (developedAngleDegrees != null) {
      Check.positive("developedAngleDegrees", developedAngleDegrees);
    }
  }
}
