package org.chordlog.notify.settings;

import java.time.Duration;
import java.util.Objects;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.notify.people.Escalation;
import org.chordlog.notify.people.Escalation.Waits;
import org.jspecify.annotations.Nullable;

/** The part {@code escalation}; times that are not given are the usual ones. */
record EscalationFields(@Nullable Times high, @Nullable Times medium, @Nullable Times low) {
  @Nullable Times of(AlertPriority priority) {
    return switch (priority) {
      case HIGH -> high;
      case MEDIUM -> medium;
      case LOW -> low;
    };
  }

  /** Of one priority, from when an alert begins to wait. */
  record Times(@Nullable Integer secondMinutes, @Nullable Integer lastMinutes) {
    Waits waits(AlertPriority priority) {
      Waits usual = Objects.requireNonNull(Escalation.USUAL.waits().get(priority));
      return new Waits(
          secondMinutes == null ? usual.second() : Duration.ofMinutes(secondMinutes),
          lastMinutes == null ? usual.last() : Duration.ofMinutes(lastMinutes));
    }
  }
}
