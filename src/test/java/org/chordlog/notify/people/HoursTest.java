package org.chordlog.notify.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shifts by the clock on the wall, also on the days when it is put forward or back. */
final class HoursTest {
  private static final ZoneId LONDON = ZoneId.of("Europe/London");
  private static final Hours NIGHT = hours("22:00", "06:00");

  private static Hours hours(String from, String to) {
    return Hours.daily(LocalTime.parse(from), LocalTime.parse(to));
  }

  private static int minutes(Hours of, Instant from, Instant to) {
    int count = 0;
    for (Instant at = from; at.isBefore(to); at = at.plusSeconds(60)) {
      count += of.hold(at, LONDON) ? 1 : 0;
    }
    return count;
  }

  @ParameterizedTest
  @CsvSource({
    "2026-11-27T05:59:59Z, false",
    "2026-11-27T06:00:00Z, true",
    "2026-11-27T13:59:59Z, true",
    "2026-11-27T14:00:00Z, false",
    "2026-11-28T07:00:00Z, false", // a Saturday
    "2026-07-03T05:00:00Z, true", // 06:00 in summer
  })
  void aShiftOfTheWeekBeginsWithItsFirstInstant(Instant at, boolean holds) {
    Hours early =
        new Hours(
            Set.of(DayOfWeek.MONDAY, DayOfWeek.FRIDAY), LocalTime.of(6, 0), LocalTime.of(14, 0));
    assertEquals(holds, early.hold(at, LONDON));
  }

  /** A night belongs to the day on which it begins. */
  @Test
  void aNightGoesOnIntoTheNextDay() {
    Hours friday = new Hours(Set.of(DayOfWeek.FRIDAY), LocalTime.of(22, 0), LocalTime.of(6, 0));
    assertEquals(true, friday.hold(Instant.parse("2026-11-28T05:59:00Z"), LONDON));
    assertEquals(false, friday.hold(Instant.parse("2026-11-27T05:59:00Z"), LONDON));
    assertEquals(
        24 * 60,
        minutes(
            hours("00:00", "00:00"),
            Instant.parse("2026-11-27T00:00:00Z"),
            Instant.parse("2026-11-28T00:00:00Z")));
  }

  /** On 2026-03-29 the clock goes from 01:00 to 02:00, on 2026-10-25 from 02:00 to 01:00. */
  @ParameterizedTest
  @CsvSource({
    "2026-03-28T12:00:00Z, 7",
    "2026-10-24T12:00:00Z, 9",
    "2026-11-26T12:00:00Z, 8",
  })
  void aNightIsAnHourShorterOrLongerWhenTheClockChanges(Instant from, int hours) {
    assertEquals(hours * 60, minutes(NIGHT, from, from.plusSeconds(24 * 3_600)));
  }

  /** Of three shifts that follow each other exactly one is under way at any minute. */
  @ParameterizedTest
  @CsvSource({"2026-03-28T12:00:00Z", "2026-10-24T12:00:00Z"})
  void shiftsThatMeetWhereTheClockChangesLeaveNoGap(Instant from) {
    List<Hours> shifts =
        List.of(hours("01:30", "09:00"), hours("09:00", "17:30"), hours("17:30", "01:30"));
    for (int minute = 0; minute < 24 * 60; minute++) {
      Instant at = from.plusSeconds(minute * 60L);
      assertEquals(1, shifts.stream().filter(each -> each.hold(at, LONDON)).count(), at::toString);
    }
  }

  @Test
  void hoursOfNoDayAreRefused() {
    assertThrows(
        BadInput.class, () -> new Hours(Set.of(), LocalTime.of(6, 0), LocalTime.of(14, 0)));
  }
}
