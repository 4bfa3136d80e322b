package org.chordlog.notify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.Await;
import org.chordlog.forward.TestPlant;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.store.Plant;
import org.chordlog.verdict.AlertStatement;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** That a workshop computer is silent is told once, and until it delivers again. */
@Tag("slow")
final class EdgeAlertsTest extends EdgeAlerts {
  @Test
  void silenceIsToldOnceByHoweverManyProgramsAndEndsWithTheNextDelivery() throws Exception {
    atPlant("backlog_rows = 12345");
    try (AlertWatch first = watch(() -> true);
        AlertWatch second = watch(() -> true)) {
      now += 14 * MINUTE;
      first.round();
      second.round();
      assertEquals(List.of(), plant.own().alerts().open());
      now += MINUTE;
      first.round();
      second.round();
      first.round();
      Alert silent = one(AlertKind.EDGE_SILENT);
      assertEquals(List.of(AlertEvent.What.RAISED), happened(silent));
      AlertStatement said = new AlertStatement(silent);
      assertEquals("Workshop computer edge A: silent", said.headline());
      assertEquals(
          "Nothing was heard from it for 15 minutes; 12,345 records were waiting then.",
          said.evidence().toString());
      delivers();
      now = heard() + MINUTE;
      first.round();
      now += MINUTE + 1;
      first.round();
      assertEquals(List.of(), open(AlertKind.EDGE_SILENT));
      assertEquals(List.of(AlertEvent.What.RAISED, AlertEvent.What.RETURNED), happened(silent));
    }
  }

  /** What the watch knows is in the database: another one goes on where the first was ended. */
  @Test
  void anAlertOutlivesTheProgramWithWhatPeopleDidToIt() {
    now += 16 * MINUTE;
    try (AlertWatch watch = watch(() -> true)) {
      watch.round();
      Alert silent = one(AlertKind.EDGE_SILENT);
      long until = now + 60 * MINUTE;
      plant.own().alerts().add(AlertActions.shelve(silent, anna(), "closed today", until));
    }
    plant.close();
    plant = open();
    try (AlertWatch watch = watch(() -> true)) {
      now += 59 * MINUTE;
      watch.round();
      assertEquals(AlertState.SHELVED, one(AlertKind.EDGE_SILENT).state());
      now += MINUTE;
      watch.round();
      assertEquals(AlertState.UNACKNOWLEDGED, one(AlertKind.EDGE_SILENT).state());
    }
  }

  /** As where a workshop is closed for weeks: nobody is told, and it is watched again by itself. */
  @Test
  void whatIsOutOfServiceIsWatchedAgainOnceItDelivers() {
    now += 16 * MINUTE;
    try (AlertWatch watch = watch(() -> true)) {
      watch.round();
      Alert silent = one(AlertKind.EDGE_SILENT);
      plant.own().alerts().add(AlertActions.takeOutOfService(silent, anna(), "holidays"));
      now += 10_000 * MINUTE;
      watch.round();
      assertEquals(AlertState.OUT_OF_SERVICE, one(AlertKind.EDGE_SILENT).state());
      atPlant("seen_micros = " + now);
      watch.round();
      assertEquals(List.of(), open(AlertKind.EDGE_SILENT));
      now += 15 * MINUTE;
      watch.round();
      assertTrue(one(AlertKind.EDGE_SILENT).id() > silent.id());
    }
  }

  /** Workshop computers wait up to 5 minutes before they try again. */
  @Test
  void nobodyIsCalledSilentJustAfterThePlantWasAway() {
    WatchedPlant watched = new WatchedPlant(plant, SILENT, () -> true);
    try (AlertWatch watch = new AlertWatch(watched, () -> now, AlertWatch.Times.USUAL)) {
      now += 5 * MINUTE;
      watch.round();
      now += 120 * MINUTE; // no round meanwhile: the plant did not answer
      watch.round();
      assertEquals(List.of(), plant.own().alerts().open());
      for (int i = 0; i < 5; i++) {
        now += MINUTE;
        watch.round();
      }
      assertEquals(1, open(AlertKind.EDGE_SILENT).size());
    }
  }

  /** As when its program ends; the test closes it once more. */
  private static void end(Plant.Turn turn) {
    turn.close();
  }

  @Test
  void programsOnOnePlantTakeTurns() throws Exception {
    now += 16 * MINUTE;
    try (Plant other = open();
        Plant.Turn first = plant.turn("alerts");
        Plant.Turn second = other.turn("alerts")) {
      assertTrue(first.mine());
      assertFalse(second.mine());
      try (AlertWatch watch = watch(second::mine)) {
        watch.round();
        assertEquals(List.of(), plant.own().alerts().open());
        server.execute(
            database,
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
                + " WHERE application_name = 'chordlog turn alerts' AND pid IN"
                + " (SELECT pid FROM pg_locks WHERE locktype = 'advisory' AND granted)"
                + " AND datname = current_database()");
        Await.until(second::mine);
        watch.round();
        assertEquals(1, open(AlertKind.EDGE_SILENT).size());
        assertFalse(first.mine());
      }
      end(second);
      Await.until(first::mine);
    }
  }

  @Test
  void whoNeverDeliveredIsNotCalledSilent() {
    server.execute(
        database,
        "INSERT INTO plant.login (name, edge_name, site) VALUES ('nobody_yet', 'cellar', 'north')");
    try (AlertWatch watch = watch(() -> true)) {
      now += 60 * MINUTE;
      watch.round();
      assertEquals(
          List.of(AlertKey.edge(AlertKind.EDGE_SILENT, TestPlant.EDGE)),
          plant.own().alerts().open().stream().map(Alert::key).toList());
    }
  }
}
