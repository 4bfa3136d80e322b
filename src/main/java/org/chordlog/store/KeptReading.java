package org.chordlog.store;

import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Reading;
import org.jspecify.annotations.Nullable;

/**
 * A reading as it counts now: {@code exclusion} says why, by whom and when it was excluded from the
 * statistics; null where it counts.
 */
public record KeptReading(Reading reading, @Nullable Exclusion exclusion) {
  public boolean excluded() {
    return exclusion != null;
  }

  /** Null where it counts. */
  public @Nullable String excludedReason() {
    return exclusion == null ? null : exclusion.reason();
  }
}
