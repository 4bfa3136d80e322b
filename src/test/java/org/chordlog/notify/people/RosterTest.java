package org.chordlog.notify.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.notify.people.Escalation.Step;
import org.chordlog.notify.people.Escalation.Waits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Who is told of what and when; people, shifts and times are invented. */
final class RosterTest {
  private static final Person EARLY = person("early", hours("06:00", "14:00"));
  private static final Person LATE = person("late", hours("14:00", "22:00"));
  private static final Person BENDER = person("bender");
  private static final Person CHIEF = person("chief");
  private static final Roster ROSTER =
      new Roster(
          List.of(
              new Group("fitters", Set.of(AlertAudience.MAINTENANCE), false, List.of(EARLY, LATE)),
              new Group("benders", Set.of(AlertAudience.OPERATOR), false, List.of(BENDER)),
              new Group("office", Set.of(), true, List.of(CHIEF))),
          ZoneId.of("Europe/London"),
          hours("20:00", "05:00"),
          Escalation.USUAL);

  private static Person person(String name, Hours... shifts) {
    return new Person(name, name + "@shop.example", List.of(shifts));
  }

  private static Hours hours(String from, String to) {
    return Hours.daily(LocalTime.parse(from), LocalTime.parse(to));
  }

  private static String now(AlertKind kind, Step step, String time) {
    return ROSTER.now(kind, step, Instant.parse("2026-11-26T" + time + ":00Z")).stream()
        .map(Person::name)
        .collect(Collectors.joining(" "));
  }

  @ParameterizedTest
  @CsvSource({
    "ROLLER_CREEPS, FIRST, 10:00, early",
    "ROLLER_CREEPS, FIRST, 15:00, late",
    "ROLLER_CREEPS, FIRST, 21:00, ''", // quiet
    "ROLLER_CREEPS, FIRST, 05:30, ''", // nobody on shift: the next one is told
    "ROLLER_CREEPS, SECOND, 10:00, early bender",
    "ROLLER_CREEPS, LAST, 10:00, early bender chief",
    "ROLLER_JUMPED, FIRST, 21:00, late", // urgent: also in quiet hours
    "ROLLER_JUMPED, FIRST, 23:00, early late", // urgent and nobody on shift: all
    "CALIBRATION_DUE, FIRST, 10:00, chief", // nobody answers for gauges or quality
    "LINK_LOST, FIRST, 10:00, bender",
    "NETWORK_LOST, SECOND, 10:00, early", // nobody answers for computers
  })
  void whoIsToldDependsOnKindStepAndTime(AlertKind kind, Step step, String time, String told) {
    assertEquals(told, now(kind, step, time));
  }

  @ParameterizedTest
  @CsvSource({
    "HIGH, 29, FIRST",
    "HIGH, 30, SECOND",
    "HIGH, 240, LAST",
    "MEDIUM, 59, FIRST",
    "MEDIUM, 60, SECOND",
    "LOW, 479, FIRST",
    "LOW, 1440, LAST",
  })
  void stepsComeByTimeAndPriority(AlertPriority priority, int minutes, Step step) {
    Instant since = Instant.parse("2026-11-26T10:00:00Z");
    assertEquals(
        step, Escalation.USUAL.step(priority, since, since.plus(Duration.ofMinutes(minutes))));
  }

  @Test
  void stepsInTheWrongOrderAreRefused() {
    assertThrows(BadInput.class, () -> new Waits(Duration.ofHours(1), Duration.ofHours(1)));
    assertThrows(BadInput.class, () -> new Waits(Duration.ZERO, Duration.ofHours(1)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "fitter",
        "fitter@",
        "@shop.example",
        "a b@shop.example",
        "a@shop.example\nBcc: x@y.example",
        "a@b, c@d",
        "<a@b>",
        "a..b@shop.example"
      })
  void whatIsNoMailAddressIsRefused(String mail) {
    assertThrows(BadInput.class, () -> new Person("x", mail, List.of()));
  }

  @ParameterizedTest
  @CsvSource({"MAIL, 11, 360", "WEBHOOK, 12, 1440"})
  void retriesEndAfterSomeTime(Retry retry, int times, int minutes) {
    Duration all = Duration.ZERO;
    for (int attempt = 1; attempt <= times; attempt++) {
      all = all.plus(retry.after(attempt).orElseThrow());
    }
    assertEquals(Duration.ofMinutes(minutes), all);
    assertEquals(true, retry.after(times + 1).isEmpty());
  }
}
