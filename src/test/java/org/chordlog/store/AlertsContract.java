package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.junit.jupiter.api.Test;

/** Alerts, what happened to them, and the cursors of those who read it. */
public abstract class AlertsContract extends StoreContract {
  private static final AlertKey CREEP = AlertKey.machine(AlertKind.ROLLER_CREEPS, "M");
  private static final AlertKey LINK = AlertKey.station(AlertKind.LINK_LOST, "A");

  protected AlertsContract(Opener opener) {
    super(opener);
  }

  private Alerts alerts() {
    return store.alerts();
  }

  private static AlertEvent event(What what, Alert before, AlertStatus after, long at) {
    Recorded by = new Recorded(at, "me");
    return new AlertEvent(what, before.state(), before.next(after), by, "looked at it");
  }

  private static AlertEvent acknowledged(Alert before, long at) {
    AlertStatus after = before.status().in(AlertState.ACKNOWLEDGED, at);
    return event(What.ACKNOWLEDGED, before, after, at);
  }

  private static AlertEvent ended(Alert before, long at) {
    AlertStatus after = before.status().in(AlertState.NORMAL, at).withPresent(false);
    return event(What.RETURNED, before, after, at);
  }

  @Test
  void anAlertIsWhatItsNewestEventSays() {
    AlertEvent raised = alerts().add(Some.raised(CREEP, 5));
    Alert before = raised.alert();
    AlertStatus shelved = before.status().shelved(99, 6).withUnsteady(true).withPresent(false);
    AlertEvent second = event(What.SHELVED, before, shelved, 6);
    AlertEvent kept = alerts().add(second);
    Alert assigned = kept.alert().next(shelved).withAssigned("Ann");
    AlertEvent third =
        alerts()
            .add(
                new AlertEvent(
                    What.ASSIGNED, AlertState.SHELVED, assigned, new Recorded(7, "me"), "hers"));
    reopen();
    assertEquals(Some.raised(CREEP, 5).alert().withId(before.id()), before);
    assertEquals(second.alert(), kept.alert());
    assertEquals(List.of(raised, kept, third), alerts().events(before.id()));
    assertEquals(Optional.of(assigned), alerts().find(before.id()));
    assertEquals(List.of(assigned), alerts().open());
    assertEquals(Optional.of(assigned), alerts().open(CREEP));
    assertEquals(Optional.empty(), alerts().open(LINK));
    assertEquals(Optional.empty(), alerts().find(99));
  }

  @Test
  void oneAlertOfAKeyIsOpenAndTheNextOneIsAnother() {
    Alert first = alerts().add(Some.raised(CREEP, 5)).alert();
    assertThrows(Stale.class, () -> alerts().add(Some.raised(CREEP, 6)));
    Alert other = alerts().add(Some.raised(LINK, 7)).alert();
    assertEquals(2, alerts().waiting());
    Alert over = alerts().add(ended(first, 8)).alert();
    Alert again = alerts().add(Some.raised(CREEP, 9)).alert();
    assertEquals(2, alerts().waiting());
    Alert known = alerts().add(acknowledged(again, 10)).alert();
    assertEquals(1, alerts().waiting());
    assertEquals(List.of(other, known), alerts().open());
    assertEquals(List.of(known, over), alerts().list(CREEP, Long.MAX_VALUE, 10));
    assertEquals(List.of(known, other, over), alerts().list(Long.MAX_VALUE, 10));
    assertEquals(List.of(other), alerts().list(known.id(), 1));
    assertEquals(
        List.of(What.RETURNED, What.RAISED, What.ACKNOWLEDGED),
        alerts().events(CREEP, 8).stream().map(AlertEvent::what).toList());
    assertEquals(2, alerts().raisedSince(7));
  }

  @Test
  void whoActsOnAnOlderStateIsRefusedAndNothingIsWritten() {
    Alert raised = alerts().add(Some.raised(CREEP, 5)).alert();
    Alert known = alerts().add(acknowledged(raised, 6)).alert();
    assertThrows(Stale.class, () -> alerts().add(acknowledged(raised, 7)));
    Alert unknown = known.withId(99);
    assertThrows(BadInput.class, () -> alerts().add(acknowledged(unknown, 7)));
    AlertEvent fits = ended(known, 8);
    AlertEvent late = acknowledged(raised, 8);
    assertThrows(Stale.class, () -> alerts().add(List.of(fits, late), Map.of("mail", 3L)));
    assertEquals(Optional.of(known), alerts().find(raised.id()));
    assertEquals(2, alerts().events(raised.id()).size());
    assertEquals(0, alerts().cursor("mail"));
  }

  @Test
  void theSameKeyHappensOnce() {
    AlertEvent event = Some.raised(CREEP, 5).withKey("once");
    AlertEvent kept = alerts().add(event);
    assertEquals(kept, alerts().add(event));
    AlertEvent seen = acknowledged(kept.alert(), 6).withKey("seen");
    AlertEvent stored = alerts().add(seen);
    reopen();
    assertEquals(stored, alerts().add(seen));
    assertEquals(List.of(kept, stored), alerts().eventsAfter(0, 10));
  }

  @Test
  void eventsAreReadByACursorThatMovesWithWhatItCaused() {
    assertEquals(0, alerts().lastEventId());
    AlertEvent first = alerts().add(Some.raised(CREEP, 5));
    AlertEvent second = alerts().add(Some.raised(LINK, 6));
    assertEquals(List.of(first), alerts().eventsAfter(0, 1));
    assertEquals(List.of(second), alerts().eventsAfter(first.id(), 10));
    assertEquals(second.id(), alerts().lastEventId());
    alerts().moveCursor("mail", first.id());
    List<AlertEvent> more =
        alerts().add(List.of(acknowledged(first.alert(), 7)), Map.of("mail", second.id(), "x", 9L));
    reopen();
    assertEquals(more, alerts().eventsAfter(second.id(), 10));
    assertEquals(second.id(), alerts().cursor("mail"));
    assertEquals(9, alerts().cursor("x"));
    assertEquals(0, alerts().cursor("other"));
  }

  @Test
  void everyKindIsKept() {
    long at = 0;
    for (AlertKind kind : AlertKind.values()) {
      AlertKey key =
          switch (kind.about()) {
            case MACHINE -> AlertKey.machine(kind, "M");
            case STATION -> AlertKey.station(kind, "A");
            case SERVICE -> AlertKey.service(kind);
            case EDGE -> AlertKey.edge(kind, "hall 1");
          };
      alerts().add(Some.raised(key, at++));
    }
    reopen();
    assertEquals(List.of(AlertKind.values()), alerts().open().stream().map(Alert::kind).toList());
  }
}
