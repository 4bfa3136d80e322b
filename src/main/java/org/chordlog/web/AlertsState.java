package org.chordlog.web;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What looks for alerts and tells them, as it is now: since when it looks (null: nothing does),
 * whether any channel beside the pages is set up, and what of late could not be delivered, each in
 * words without a full stop.
 */
public record AlertsState(
    @Nullable Instant watchingSince, boolean channels, List<String> problems) {
  /** Nothing looks for alerts, nobody is told. */
  public static final AlertsState OFF = new AlertsState(null, false, List.of());

  public AlertsState {
    problems = List.copyOf(problems);
  }
}
