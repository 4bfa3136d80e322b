package org.chordlog.notify.people;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Set;
import org.chordlog.measure.BadInput;

/**
 * A part of the day by the clock on the wall, on days of the week; one that ends at or before its
 * begin ends on the next day. Where the clock is put forward over an end, that end is as much
 * later; where it is put back, an end that comes twice is the first of the two. So two hours of
 * which one ends when the other begins never leave a gap and never overlap.
 */
public record Hours(Set<DayOfWeek> days, LocalTime from, LocalTime to) {
  public Hours {
    days = Set.copyOf(days);
    if (days.isEmpty()) {
      throw new BadInput("days", "", "are missing", "at least one of monday to sunday");
    }
  }

  /** On all days. */
  public static Hours daily(LocalTime from, LocalTime to) {
    return new Hours(Set.of(DayOfWeek.values()), from, to);
  }

  /** Whether they are under way then; their first instant is in, their last one is not. */
  public boolean hold(Instant at, ZoneId zone) {
    LocalDate today = at.atZone(zone).toLocalDate();
    return holdOn(today, at, zone) || holdOn(today.minusDays(1), at, zone);
  }

  private boolean holdOn(LocalDate day, Instant at, ZoneId zone) {
    LocalDate last = to.isAfter(from) ? day : day.plusDays(1);
    return days.contains(day.getDayOfWeek())
        && !at.isBefore(day.atTime(from).atZone(zone).toInstant())
        && at.isBefore(last.atTime(to).atZone(zone).toInstant());
  }
}
