package org.chordlog.web;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What looks for alerts and tells them, as it is now: since when it looks (null: nothing does),
 * whether any channel beside the pages is set up, and how many messages could not be delivered.
 */
public record AlertsState(@Nullable Instant watchingSince, boolean channels, long undelivered) {
  /** Nothing looks for alerts, nobody is told. */
  public static final AlertsState OFF = new AlertsState(null, false, 0);
}
