package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.store.Some;
import org.chordlog.web.http.Times;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.support.ui.Select;

/** Maintenance at the page of alerts, in a real browser. */
final class AlertsPageTest extends ShopTest {
  private static final String ALERTS = "nav.places a[href='/alerts.html']";

  private static Alert raised(AlertKind kind, String machine) {
    long now = Times.micros(Instant.now());
    return shop.served
        .store
        .alerts()
        .add(Some.raised(AlertKey.machine(kind, machine), now))
        .alert();
  }

  private static Alert now(Alert alert) {
    return shop.served.store.alerts().find(alert.id()).orElseThrow();
  }

  private static String card(String what, String where) {
    return "article[aria-label='" + what + ", " + where + "']";
  }

  private static void press(String move, String what, String where) throws Exception {
    shop.click("button[aria-label='" + move + ": " + what + ", " + where + "']");
  }

  @Test
  void whatWaitsIsReadFirstWithWhereSinceWhenAndWhatToDo() throws Exception {
    shop.go("/alerts.html");
    shop.sees("#alerts article:first-of-type", "Urgent");
    shop.sees("#alerts article:first-of-type", "Machine jumped");
    shop.sees("#alerts article:first-of-type", "(+7.4 mm)");
    shop.sees("#alerts article:first-of-type", "drive locked out");
    shop.sees("#alerts article:first-of-type", "that time is over");
    shop.sees(card("Machine creeping", "Machine roller 1"), "Seen by Petra");
    shop.sees(card("Machine creeping", "Machine roller 1"), "bearing ordered");
    shop.sees("#service", "Nothing looks for alerts");
    shop.sees("#service", "Nobody is told by mail");
    shop.sees("#weeks tbody tr:first-child", "3");
    shop.click(card("Machine jumped", "Machine roller 2") + " summary");
    shop.sees(card("Machine jumped", "Machine roller 2"), "Something was changed or broke then");
    shop.sees(card("Machine jumped", "Machine roller 2") + " tbody", "Raised");
    shop.findsNothingGrave();
    shop.click(card("Machine jumped", "Machine roller 2") + " a");
    shop.sees("h1", "roller 2");
    shop.sees("[aria-label='Alerts']", "Machine jumped");
  }

  @Test
  void anAlertIsAcknowledgedAssignedPutAsideAndTakenUpAgain() throws Exception {
    Alert raised = raised(AlertKind.LIMIT_AHEAD, "roller 1");
    shop.go("/alerts.html");
    press("Acknowledge", "Limit near", "Machine roller 1");
    shop.fill("A word on it", "on my way");
    shop.findsNothingGrave();
    shop.click("dialog [type='submit']");
    shop.sees(card("Limit near", "Machine roller 1"), "Seen by quality");
    shop.sees(card("Limit near", "Machine roller 1"), "on my way");
    press("Assign", "Limit near", "Machine roller 1");
    shop.fill("Whose it is from now on", "Marek");
    shop.click("dialog [type='submit']");
    shop.sees(card("Limit near", "Machine roller 1"), "Marek");
    press("Put aside", "Limit near", "Machine roller 1");
    shop.click("dialog [type='submit']");
    shop.sees("dialog .fault", "Is missing");
    shop.refusalsWereMeant();
    shop.fill("Why (kept in the record)", "trial pieces");
    shop.choose("minutes", "240");
    shop.click("dialog [type='submit']");
    shop.sees(card("Limit near", "Machine roller 1"), "Put aside by quality, until");
    assertEquals(AlertState.SHELVED, now(raised).state());
    press("Take it up again", "Limit near", "Machine roller 1");
    shop.click("dialog [type='submit']");
    shop.sees(card("Limit near", "Machine roller 1"), "Waits for somebody");
    assertEquals("Marek", now(raised).assignedTo());
    assertEquals(5, shop.served.store.alerts().events(raised.id()).size());
  }

  @Test
  void whoActsOnAnOlderStateReadsThePresentOneAndKeepsWhatWasTyped() throws Exception {
    Alert raised = raised(AlertKind.ROLLER_CREEPS, "roller 2");
    shop.go("/alerts.html");
    press("Put aside", "Machine creeping", "Machine roller 2");
    shop.fill("Why (kept in the record)", "waiting for the bearing");
    Recorded marek = new Recorded(Times.micros(Instant.now()), "Marek");
    var unused =
        shop.served.store.alerts().add(AlertActions.acknowledge(raised, marek, "heard it"));
    shop.click("dialog [type='submit']");
    shop.sees("dialog .fault.general", "Now: Seen by Marek");
    shop.sees("dialog .fault.general", "heard it");
    shop.refusalsWereMeant();
    assertEquals(
        "waiting for the bearing", shop.find("dialog [name='reason']").getDomProperty("value"));
    assertEquals(AlertState.ACKNOWLEDGED, now(raised).state());
    shop.click("dialog [type='submit']");
    Await.until(() -> now(raised).state() == AlertState.SHELVED);
  }

  @Test
  void aRepairIsEndedByTheLogBookOfTheMachine() throws Exception {
    Alert raised = raised(AlertKind.LIMIT_AHEAD, "roller 2");
    shop.go("/alerts.html");
    press("Under repair", "Limit near", "Machine roller 2");
    shop.fill("Why (kept in the record)", "new bearing");
    shop.click("dialog [type='submit']");
    shop.sees(card("Limit near", "Machine roller 2"), "Under repair, says quality");
    shop.go("/machine.html?machine=roller%202");
    shop.sees("[aria-label='Log book']", "Log book");
    shop.press("Write an entry");
    new Select(shop.find("dialog [name='kind']")).selectByValue("BEARING_RENEWED");
    shop.sees("dialog", "Is the repair over?");
    shop.press("Write it down");
    Await.until(() -> !now(raised).open());
    AlertEvent last = shop.served.store.alerts().events(raised.id()).get(2);
    assertEquals("Log book: Bearing renewed", last.note());
    shop.go("/alerts.html");
    shop.sees("#earlier", "Limit near");
  }

  @Test
  void whereAllIsQuietThePageSaysSinceWhenItLooks(@TempDir Path other) throws Exception {
    try (Served served = new Served(other)) {
      served.web.alertsFrom(
          () -> new AlertsState(Instant.now().minusSeconds(7_200), true, List.of()));
      Visitor visitor = new Visitor(served, browser, "Anna");
      visitor.go("/alerts.html");
      visitor.sees("#alerts", "All is quiet");
      visitor.sees("#alerts", "2 h ago");
      visitor.sees("#earlier", "None yet");
      assertEquals("Alerts", visitor.text(ALERTS));
      assertEquals("", visitor.text("#service"));
      visitor.findsNothingGrave();
      List<String> problems = List.of("not delivered to anna@example.org: no answer");
      served.web.alertsFrom(() -> new AlertsState(Instant.now(), true, problems));
      visitor.go("/alerts.html");
      visitor.sees(
          "#service", "Not everybody is told Not delivered to anna@example.org: no answer.");
      visitor.leavesNothingOnTheConsole();
      shop.go("/alerts.html"); // before its service ends, which the page would complain of
    }
  }

  @Test
  void theBarOfEveryPageFollowsHowManyWait() throws Exception {
    shop.go("/station.html?station=A");
    int before = shop.served.store.alerts().waiting();
    shop.sees(ALERTS, before + " alerts");
    Alert raised = raised(AlertKind.ROLLER_JUMPED, "roller 9");
    shop.sees(ALERTS, before + 1 + " alerts");
    shop.sees("[aria-label='Alerts']", "Calibration due");
    Recorded by = new Recorded(Times.micros(Instant.now()), "Marek");
    var unused = shop.served.store.alerts().add(AlertActions.acknowledge(raised, by, ""));
    shop.sees(ALERTS, before + " alerts");
    shop.go("/jobs.html");
    shop.sees(ALERTS, before + " alerts");
  }
}
