package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Plan;
import org.chordlog.measure.SubgroupRule;
import org.junit.jupiter.api.Test;

/** The small parts of a station, by themselves. */
final class PartsTest {
  private static final long NOON = ClockWatch.EARLIEST_MICROS + 86_400_000_000L;
  private static final long SECOND = 1_000_000_000L;

  private final List<Long> steps = new ArrayList<>();
  private final ClockWatch watch = new ClockWatch((expected, found) -> steps.add(found - expected));

  @Test
  void aStepOfTheClockIsToldOnceAndDriftIsNone() {
    watch.look(NOON, 5 * SECOND);
    watch.look(NOON + 1_400_000, 6 * SECOND);
    assertEquals(List.of(), steps);
    assertEquals(ClockState.STEADY, watch.stateAt(NOON));
    watch.look(NOON - 3_600_000_000L, 7 * SECOND);
    watch.look(NOON - 3_599_000_000L, 8 * SECOND);
    assertEquals(List.of(-3_602_400_000L), steps);
    assertEquals(ClockState.STEPPED, watch.stateAt(NOON));
    assertEquals(ClockState.STEADY, watch.stateAt(NOON));
  }

  @Test
  void aClockBeforeTheReleaseCanNotBeRight() {
    watch.look(1_000, SECOND);
    assertEquals(ClockState.BEFORE_BUILD, watch.stateAt(1_000));
  }

  @Test
  void aFootSwitchIsPressedOncePerClosingWhateverItsContactsDo() {
    FootSwitch foot = new FootSwitch();
    long millis = 1_000_000;
    assertFalse(foot.pressed(false, 0));
    assertTrue(foot.pressed(true, millis));
    assertFalse(foot.pressed(false, 5 * millis), "chatter");
    assertFalse(foot.pressed(true, 8 * millis), "still held");
    assertFalse(foot.pressed(false, 200 * millis));
    assertTrue(foot.pressed(true, 400 * millis));
  }

  @Test
  void placesGoAlongThePlanPieceByPiece() {
    Plan plan =
        new Plan(List.of("start", "end"), new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1));
    Place place = Place.first(plan);
    assertEquals(new Place(1, "end"), place.after(plan));
    assertEquals(new Place(2, "start"), place.after(plan).after(plan));
    assertEquals(new Place(2, "start"), place.nextPiece(plan));
    assertEquals(new Place(4, "start"), new Place(4, "middle").on(plan));
  }

  @Test
  void recentValuesAreThoseOfTheLastSecondOrOfFiveWhenTheyAreFew() {
    RecentValues slow = new RecentValues(SECOND);
    for (int i = 0; i < 10; i++) {
      slow.add(i, i * SECOND / 2);
    }
    assertEquals(10, slow.since(9 * SECOND / 2).length);
    RecentValues quick = new RecentValues(SECOND);
    for (int i = 0; i < 1_000; i++) {
      quick.add(i, i * SECOND / 100);
    }
    assertEquals(101, quick.since(999 * SECOND / 100).length);
    assertEquals(0, quick.since(100 * SECOND).length);
    quick.clear();
    assertEquals(0, quick.since(999 * SECOND / 100).length);
  }
}
