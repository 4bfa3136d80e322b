package org.chordlog.notify.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.junit.jupiter.api.Test;

final class AlertRuleTest {
  private static final long MINUTE = 60_000_000L;
  private static final long HOUR = 60 * MINUTE;
  private static final AlertKey LINK = AlertKey.station(AlertKind.LINK_LOST, "A");
  private static final AlertKey DISK = AlertKey.service(AlertKind.DISK_LOW);

  private static Found found(AlertKey key) {
    return new Found(key, AlertEvidence.NONE);
  }

  private static AlertEvent raised(AlertKey key, List<AlertEvent> recent, long at) {
    return AlertRule.appears(found(key), null, recent, at).orElseThrow();
  }

  private static Recorded by(long at) {
    return new Recorded(at, "Ann");
  }

  @Test
  void whatIsOnTheShelfComesBackByItself() {
    Alert alert = raised(LINK, List.of(), 5).alert();
    AlertEvent shelved = AlertActions.shelve(alert, by(10), "new cable ordered", 10 + HOUR);
    assertEquals("new cable ordered", shelved.note());
    assertEquals(AlertState.SHELVED, shelved.to());
    assertEquals(Optional.empty(), AlertRule.shelfEnds(shelved.alert(), 9 + HOUR));
    AlertEvent back = AlertRule.shelfEnds(shelved.alert(), 10 + HOUR).orElseThrow();
    assertEquals(AlertState.UNACKNOWLEDGED, back.to());
    assertEquals(AlertEvent.SERVICE, back.by());
    Alert gone = AlertRule.disappears(shelved.alert(), 20).orElseThrow().alert();
    assertEquals(AlertState.SHELVED, gone.state());
    assertEquals(10 + HOUR, gone.status().shelvedUntilMicros());
    assertEquals(AlertState.NORMAL, AlertRule.shelfEnds(gone, 11 + HOUR).orElseThrow().to());
  }

  @Test
  void nothingIsPutAsideWithoutAReasonOrForMoreThanADay() {
    Alert alert = raised(LINK, List.of(), 5).alert();
    assertThrows(BadInput.class, () -> AlertActions.shelve(alert, by(10), " ", 10 + HOUR));
    assertThrows(BadInput.class, () -> AlertActions.shelve(alert, by(10), "x", 10));
    assertThrows(BadInput.class, () -> AlertActions.shelve(alert, by(10), "x", 11 + 24 * HOUR));
    assertThrows(BadInput.class, () -> AlertActions.takeOutOfService(alert, by(10), ""));
    assertEquals(AlertState.SHELVED, AlertActions.shelve(alert, by(10), "x", 10 + 24 * HOUR).to());
  }

  @Test
  void anActionThatTheStateDoesNotAllowIsRefusedWithTheState() {
    Alert alert = raised(LINK, List.of(), 5).alert();
    Alert known = AlertActions.acknowledge(alert, by(6), "on my way").alert();
    Stale e = assertThrows(Stale.class, () -> AlertActions.acknowledge(known, by(7), ""));
    assertTrue(String.valueOf(e.getMessage()).contains("acknowledged this alert already"));
    assertThrows(Stale.class, () -> AlertActions.unshelve(known, by(7), ""));
    Alert assigned = AlertActions.assign(known, by(8), "Bob", "").alert();
    assertEquals("Bob", assigned.assignedTo());
    assertEquals(AlertState.ACKNOWLEDGED, assigned.state());
    assertEquals(3, assigned.revision());
  }

  @Test
  void aRepairEndsOutOfService() {
    AlertKey creep = AlertKey.machine(AlertKind.ROLLER_CREEPS, "M");
    Alert out =
        AlertActions.takeOutOfService(raised(creep, List.of(), 5).alert(), by(6), "bearing")
            .alert();
    assertEquals(Optional.empty(), AlertRule.appears(found(creep), out, List.of(), 7));
    AlertEvent back = AlertRule.repaired(out, 8).orElseThrow();
    assertEquals(What.BACK_IN_SERVICE, back.what());
    assertFalse(back.alert().open());
  }

  @Test
  void whatComesAndGoesMoreThanThreeTimesInTenMinutesIsUnsteadyAndLatches() {
    List<AlertEvent> recent = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      AlertEvent raised = raised(DISK, recent, i * MINUTE);
      assertFalse(raised.alert().status().unsteady());
      recent.add(raised);
      recent.add(AlertRule.disappears(raised.alert(), i * MINUTE + 1).orElseThrow());
    }
    Alert fourth = raised(DISK, recent, 3 * MINUTE).alert();
    assertTrue(fourth.status().unsteady());
    Steadied steadied = new Steadied();
    Set<AlertKind> judged = Set.of(AlertKind.DISK_LOW);
    long goneAt = 4 * MINUTE;
    for (long at : new long[] {goneAt, goneAt + 5 * MINUTE, goneAt + 10 * MINUTE - 1}) {
      assertEquals(List.of(), steadied.take(judged, List.of(), List.of(fourth), at).gone());
    }
    assertEquals(
        List.of(fourth),
        steadied.take(judged, List.of(), List.of(fourth), goneAt + 10 * MINUTE).gone());
    assertEquals(
        AlertState.RETURNED_UNACKNOWLEDGED,
        AlertRule.disappears(fourth, goneAt + 10 * MINUTE).orElseThrow().to());
  }

  @Test
  void whatIsNotSoForLongEnoughIsNotTold() {
    Steadied steadied = new Steadied();
    Set<AlertKind> judged = Set.of(AlertKind.DISK_LOW);
    List<Found> full = List.of(found(DISK));
    assertEquals(List.of(), steadied.take(judged, full, List.of(), 0).appeared());
    assertEquals(List.of(), steadied.take(judged, List.of(), List.of(), MINUTE - 1).appeared());
    assertEquals(List.of(), steadied.take(judged, full, List.of(), MINUTE).appeared());
    assertEquals(full, steadied.take(judged, full, List.of(), 2 * MINUTE).appeared());
  }

  @Test
  void aClockThatIsSetBackMakesNoDelayLongerThanTwice() {
    Steadied steadied = new Steadied();
    Set<AlertKind> judged = Set.of(AlertKind.DISK_LOW);
    List<Found> full = List.of(found(DISK));
    assertEquals(List.of(), steadied.take(judged, full, List.of(), HOUR).appeared());
    assertEquals(List.of(), steadied.take(judged, full, List.of(), 0).appeared());
    assertEquals(full, steadied.take(judged, full, List.of(), MINUTE).appeared());
    List<Alert> open = List.of(raised(DISK, List.of(), 0).alert());
    assertEquals(List.of(), steadied.take(judged, List.of(), open, 2 * HOUR).gone());
    assertEquals(List.of(), steadied.take(judged, List.of(), open, HOUR).gone());
    assertEquals(open, steadied.take(judged, List.of(), open, HOUR + 10 * MINUTE).gone());
  }

  @Test
  void anAlertEndsOnlyAfterADelayAndOnlyWhereItWasLookedFor() {
    Steadied steadied = new Steadied();
    Alert alert = raised(LINK, List.of(), 0).alert();
    List<Alert> open = List.of(alert);
    Set<AlertKind> links = StationRule.LINKS;
    assertEquals(List.of(), steadied.take(ServiceRule.KINDS, List.of(), open, 0).gone());
    assertEquals(List.of(), steadied.take(links, List.of(), open, HOUR).gone());
    assertEquals(List.of(), steadied.take(links, List.of(found(LINK)), open, HOUR + 1).gone());
    assertEquals(List.of(), steadied.take(links, List.of(), open, HOUR + 2).gone());
    assertEquals(open, steadied.take(links, List.of(), open, HOUR + 2 + MINUTE).gone());
  }

  @Test
  void whatGoesOnAsAnotherAlertIsOverAndSaysAsWhich() {
    AlertKey creep = AlertKey.machine(AlertKind.ROLLER_CREEPS, "M");
    Alert open = raised(creep, List.of(), 5).alert();
    AlertEvent replaced = AlertRule.replaced(open, "Machine jumped", 9).orElseThrow();
    assertEquals(What.REPLACED, replaced.what());
    assertEquals("Machine jumped", replaced.note());
    assertEquals(AlertEvent.SERVICE, replaced.by());
    assertFalse(replaced.alert().open() || replaced.alert().status().present());
    Alert repair = AlertActions.takeOutOfService(open, by(6), "bearing").alert();
    assertEquals(Optional.empty(), AlertRule.replaced(repair, "Machine jumped", 9));
  }

  private static Found due(double days) {
    return new Found(
        AlertKey.station(AlertKind.CALIBRATION_DUE, "A"),
        AlertEvidence.of(Map.of(AlertFigure.DAYS_LEFT, days)));
  }

  @Test
  void aCalibrationIsToldAtFourteenThreeAndNoDays() {
    Alert alert = AlertRule.appears(due(14), null, List.of(), 1).orElseThrow().alert();
    Alert known = AlertActions.acknowledge(alert, by(2), "").alert();
    for (double quiet : new double[] {13, 4}) {
      assertEquals(Optional.empty(), AlertRule.appears(due(quiet), known, List.of(), 3));
    }
    AlertEvent again = AlertRule.appears(due(3), known, List.of(), 4).orElseThrow();
    assertEquals(What.AGAIN, again.what());
    assertEquals(AlertState.UNACKNOWLEDGED, again.to());
    assertEquals(3, again.alert().evidence().figure(AlertFigure.DAYS_LEFT));
    assertEquals(Optional.empty(), AlertRule.appears(due(1), again.alert(), List.of(), 5));
    assertEquals(
        What.AGAIN, AlertRule.appears(due(0), again.alert(), List.of(), 6).orElseThrow().what());
  }
}
