package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import org.chordlog.notify.rule.AlertRule;
import org.chordlog.store.Outbox;
import org.chordlog.store.Some;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;
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

  private static long raisedSoFar() {
    return shop.served.store.alerts().raisedSince(0);
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
    shop.sees("#alerts article:first-of-type", "(+7.4 mm at 1500 mm)");
    shop.sees("#alerts article:first-of-type", "drive locked out");
    shop.sees("#alerts article:first-of-type", ": overdue");
    shop.sees(card("Machine creeping", "Machine roller 1"), "Seen by Petra");
    shop.sees(card("Machine creeping", "Machine roller 1"), "bearing ordered");
    shop.sees("#service", "Nothing looks for alerts");
    shop.sees("#service", "Nobody is told by mail");
    shop.sees("#weeks tbody tr:first-child", String.valueOf(raisedSoFar()));
    shop.click(card("Machine jumped", "Machine roller 2") + " summary");
    shop.sees(card("Machine jumped", "Machine roller 2"), "Something was changed or broke then");
    shop.sees(card("Machine jumped", "Machine roller 2") + " tbody", "Raised");
    shop.counts(card("Machine jumped", "Machine roller 2") + " [data-head='Said']:empty", 1);
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

  private static double fromTheEdge(Visitor visitor) {
    return visitor.number(
        "const left = (part) => document.querySelector(part).getBoundingClientRect().left;"
            + "return left('#alerts .empty p') - left('#alerts .empty')");
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
      assertTrue(fromTheEdge(visitor) > 8, "px from the edge of the sheet");
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

  private static @Nullable Object said(String script) {
    return browser.executeScript("return " + script);
  }

  @Test
  void aLinkOfAMailLeadsToItsAlertAlsoOnceThatIsOver() throws Exception {
    Alert raised = raised(AlertKind.LIMIT_AHEAD, "roller 5");
    shop.go("/alerts.html#" + raised.id());
    Await.until(() -> ("alert-" + raised.id()).equals(said("document.activeElement.id")));
    assertEquals(1, shop.count("article[data-linked]"));
    shop.findsNothingGrave();
    long later = raised.status().sinceMicros() + 1;
    Recorded marek = new Recorded(later, "Marek");
    Alert known =
        shop.served.store.alerts().add(AlertActions.acknowledge(raised, marek, "")).alert();
    var unused =
        shop.served.store.alerts().add(AlertRule.disappears(known, later + 1).orElseThrow());
    shop.go("/jobs.html");
    shop.go("/alerts.html#" + raised.id());
    shop.sees("#linked", "Over, from your link");
    shop.sees("#linked " + card("Limit near", "Machine roller 5"), "Over");
    browser.executeScript("location.hash = '#999999'");
    shop.sees("#linked", "There is no alert 999999 here");
    shop.go("/jobs.html"); // the page asks again with each event
    shop.refusalsWereMeant();
  }

  @Test
  void whoCouldNotBeToldIsSaidOnTheCard() throws Exception {
    Alert raised = raised(AlertKind.LIMIT_AHEAD, "roller 6");
    Outbox outbox = shop.served.store.outbox();
    Outbox.Recipient ann = Outbox.Recipient.mail("ann@shop.example");
    long now = raised.status().sinceMicros();
    var message = new Outbox.Message(0, ann, Outbox.Topic.RAISED, 900, raised.id(), now);
    assertEquals(1, outbox.add(List.of(message)));
    Outbox.Delivery made = outbox.deliver(ann, outbox.unsent(ann, 1), now);
    outbox.note(made.id(), new Outbox.Progress(Outbox.State.WAITING, 1, now, "it is silent"));
    shop.go("/alerts.html");
    String card = card("Limit near", "Machine roller 6");
    shop.sees(card, "Not told yet ann@shop.example, tried since");
    shop.sees(card, "it is silent.");
    outbox.note(made.id(), new Outbox.Progress(Outbox.State.FAILED, 9, now, "no such mailbox"));
    shop.go("/alerts.html");
    shop.sees(card, "no longer tried: no such mailbox.");
    shop.findsNothingGrave();
  }

  /** What went well: the newest three; trouble however much follows; three are seen at a time. */
  @Test
  void whatCameOfAnActionStaysUntilItIsReadHoweverManyFollow() throws Exception {
    Alert unusedLimit = raised(AlertKind.LIMIT_AHEAD, "roller 7");
    Alert unusedJump = raised(AlertKind.ROLLER_JUMPED, "roller 7");
    shop.looksAt(1280, 800);
    shop.go("/alerts.html");
    confirm("Acknowledge", "Limit near", "roller 7");
    press("Put aside", "Limit near", "Machine roller 7");
    shop.fill("Why (kept in the record)", "trial");
    shop.click("dialog [type='submit']");
    shop.sees(".notes", "put aside");
    confirm("Take it up again", "Limit near", "roller 7");
    browser.executeScript("localStorage.setItem('name', 'Max')");
    press("Acknowledge", "Machine jumped", "Machine roller 7");
    shop.click("dialog [type='submit']");
    shop.sees(".note:first-child", "Machine jumped: seen by Max.");
    browser.executeScript("localStorage.setItem('name', 'quality')");
    assertEquals(1, shop.count(".note")); // those before were read when the dialog opened
    shop.press("OK");
    browser.executeScript(
        "const module = document.querySelector('script[type=module]').src;"
            + "import(new URL('notes.js', module)).then(to => { to.note('One.'); to.note('Two.');"
            + "to.note('No room.', 'bad'); to.note('Three.'); to.note('Four.') })");
    shop.sees(".note:first-child", "Four."); // of what went well the newest three
    shop.sees(".notes", "and 1 more not read yet");
    assertEquals(4, shop.count(".note"));
    shop.looksAt(844, 390);
    browser.executeScript("dispatchEvent(new Event('resize'))");
    Await.until(() -> shop.count(".note:not([hidden])") == 1);
    assertEquals("3", shop.find(".note:first-child p").getDomAttribute("data-behind"));
    assertEquals(0, shop.count(".notes > .row:not([hidden])")); // nothing below it
    shop.looksAt(1280, 800);
    browser.executeScript("dispatchEvent(new Event('resize'))");
    Await.until(() -> shop.count(".note:not([hidden])") == 3);
    assertEquals(3, shop.count(".note:not([hidden])"));
    shop.findsNothingGrave();
    shop.click(".note:first-child button");
    assertEquals(3, shop.count(".note:not([hidden])"));
    shop.sees(".note:nth-child(2)", "No room.");
    shop.press("All read");
    assertEquals(0, shop.count(".note"));
  }

  private static void confirm(String move, String what, String machine) throws Exception {
    press(move, what, "Machine " + machine);
    shop.click("dialog [type='submit']");
    shop.counts("dialog", 0);
    shop.sees(".note", what + ": ");
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
