package org.chordlog.notify.settings;

import java.time.DayOfWeek;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.chordlog.notify.people.Hours;
import org.jspecify.annotations.Nullable;

/** A part of {@code shifts}; on all days where none are given. */
record ShiftFields(
    @Nullable String name,
    @Nullable List<DayOfWeek> days,
    @Nullable String from,
    @Nullable String to) {
  Hours hours() {
    return hours(days, from, to);
  }

  private static Hours hours(
      @Nullable List<DayOfWeek> days, @Nullable String from, @Nullable String to) {
    Set<DayOfWeek> on =
        days == null || days.isEmpty() ? EnumSet.allOf(DayOfWeek.class) : EnumSet.copyOf(days);
    return new Hours(on, KeyValues.time("from", from), KeyValues.time("to", to));
  }

  /** The part {@code quietHours}. */
  record Quiet(@Nullable List<DayOfWeek> days, @Nullable String from, @Nullable String to) {
    Hours hours() {
      return ShiftFields.hours(days, from, to);
    }
  }
}
