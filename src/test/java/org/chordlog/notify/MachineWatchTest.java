package org.chordlog.notify;

import static java.util.Objects.requireNonNull;
import static org.chordlog.notify.WatchedShop.MINUTE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.Duration;
import java.util.List;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.rule.AlertActions;
import org.junit.jupiter.api.Test;

/** The watch over machines: what creeps, and what is out of service. */
final class MachineWatchTest extends WatchOfShop {
  /** One round after each piece, so that only the schedule decides when it is judged. */
  private void bendAndLook(int pieces, double from, double perPiece) {
    for (int i = 0; i < pieces; i++) {
      shop.bend(1, from + perPiece * i, 0);
      shop.round(0);
    }
  }

  @Test
  void aMachineThatCreepsIsToldOnceWithTheReadingsThatShowIt() {
    bendAndLook(1, 0, 0);
    bendAndLook(44, 0, 0);
    assertEquals(List.of(), shop.events());
    bendAndLook(120, 0, 0.08);
    List<String> creeps = shop.events().stream().filter(each -> each.contains("CREEPS")).toList();
    assertEquals(List.of("RAISED ROLLER_CREEPS M"), creeps);
    Alert alert =
        shop.store.alerts().open().stream()
            .filter(each -> each.kind().name().equals("ROLLER_CREEPS"))
            .findFirst()
            .orElseThrow();
    double judged = requireNonNull(alert.evidence().figure(AlertFigure.PIECES));
    double since = requireNonNull(alert.evidence().figure(AlertFigure.SINCE_PIECE));
    assertEquals(0, judged % 15, () -> "judged at piece " + judged);
    assertEquals(1800.0, alert.evidence().figure(AlertFigure.TARGET_MM));
    assertEquals(12.0, alert.evidence().figure(AlertFigure.TOLERANCE_MM));
    assertEquals(since, (double) alert.evidence().firstReadingId());
    assertEquals(judged + 1, (double) alert.evidence().lastReadingId());
  }

  /** A service that starts again every fourth piece judges when, and as often as, one that runs. */
  @Test
  void aRestartJudgesNeitherTwiceNorTooOften() {
    bendAndLook(46, 0, 0);
    for (int i = 0; i < 75; i++) {
      shop.bend(1, 0.08 * i, 0);
      if (i % 4 == 0) {
        shop.restart();
      }
      shop.round(0);
      shop.round(0);
    }
    List<AlertEvent> restarted = shop.store.alerts().eventsAfter(0, 100);
    shop.close();
    shop = new WatchedShop(directory.resolve("other"), Duration.ZERO);
    bendAndLook(46, 0, 0);
    bendAndLook(75, 0, 0.08);
    List<AlertEvent> running = shop.store.alerts().eventsAfter(0, 100);
    assertFalse(running.isEmpty());
    assertEquals(running, restarted);
  }

  @Test
  void looksInBetweenChangeNothing() {
    bendAndLook(120, 0, 0.05);
    List<AlertEvent> expected = shop.store.alerts().eventsAfter(0, 100);
    shop.close();
    shop = new WatchedShop(directory.resolve("other"), Duration.ZERO);
    for (int i = 0; i < 120; i++) {
      shop.bend(1, 0.05 * i, 0);
      shop.monitor.readMachine("M", machine -> machine.verdict(null));
      shop.round(0);
      shop.monitor.readMachine("M", machine -> machine.verdict(0.01));
      shop.round(0);
    }
    assertEquals(expected, shop.store.alerts().eventsAfter(0, 100));
  }

  private Alert outOfService() {
    bendAndLook(46, 0, 0);
    bendAndLook(100, 0, 0.08);
    Alert alert = shop.store.alerts().open().get(0);
    Recorded by = new Recorded(shop.now, "Ann");
    shop.store.alerts().add(AlertActions.takeOutOfService(alert, by, "new bearing"));
    shop.round(MINUTE);
    assertEquals(AlertState.OUT_OF_SERVICE, state(alert));
    return alert;
  }

  @Test
  void aSetUpEndsWhatIsOutOfService() {
    Alert alert = outOfService();
    shop.happened(JobEvent.Kind.SET_UP);
    shop.round(MINUTE);
    assertEquals(AlertState.NORMAL, state(alert));
  }

  @Test
  void aRepairInTheLogBookEndsWhatIsOutOfServiceAndOilDoesNot() {
    Alert alert = outOfService();
    worked(LogbookEntry.Kind.LUBRICATED);
    shop.round(MINUTE);
    assertEquals(AlertState.OUT_OF_SERVICE, state(alert));
    worked(LogbookEntry.Kind.BEARING_RENEWED);
    shop.round(MINUTE);
    assertEquals(AlertState.NORMAL, state(alert));
  }

  private void worked(LogbookEntry.Kind kind) {
    Recorded by = new Recorded(shop.now, "Ann");
    LogbookEntry.Work work = new LogbookEntry.Work(kind, "", "", "", "");
    LogbookEntry unused = shop.store.logbooks().add(new LogbookEntry(0, "M", work, by, null, by));
  }
}
