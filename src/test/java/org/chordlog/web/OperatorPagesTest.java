package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** The operator, task by task. */
final class OperatorPagesTest extends BrowserTest {
  private static final String STATION = "/station.html?station=A";
  @TempDir Path directory;
  private Served served;
  private Visitor operator;
  private Job job;

  @BeforeEach
  void open() throws Exception {
    served = new Served(directory.resolve("data"));
    job = served.job();
    served.zeroAndFree();
    operator = new Visitor(served, browser, "Anna");
  }

  @AfterEach
  void close() {
    served.close();
  }

  @Test
  void seesReadingsComeWithVerdictAdviceChartAndFigures() throws Exception {
    operator.go("/");
    operator.sees("#freshness", "Live");
    operator.page.executeScript("window.sameDocument = true");
    for (int taken = 1; taken <= 3; taken++) {
      touch(2.733, taken);
    }
    operator.sees("[data-figure='n']", "3");
    operator.sees(".word", "Good");
    operator.sees(".next", "Don't correct yet");
    operator.sees(".spread", "true for 95 of 100 readings");
    Await.until(() -> operator.count("#chart svg") == 1);
    assertEquals(true, operator.page.executeScript("return window.sameDocument"));
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void seesVerdictRadiusDeviationDepthToAimForAndWhatToDo() throws Exception {
    operator.go(STATION);
    operator.sees(".now", "in free air");
    operator.sees(".word", "Ready");
    operator.sees(".next", "Measure piece 1, start, 1 of 3.");
    operator.sees(".part:last-child .value", "2.727");
    touch(2.9, 1);
    operator.sees(".word", "Too tight");
    operator.sees(".next", "Ask before you go on.");
    operator.sees(".of-piece", "it needs less bend");
    operator.sees(".figure", "169");
    operator.sees(".part:first-child .value", "−10");
    operator.sees(".of-piece", "Piece 1, start, 1 of 3, just now");
    operator.sees(".of-piece", "Next: piece 1, middle, 2 of 3");
    operator.sees("#log", "Recorded: 2.900 mm");
    Await.until(() -> operator.count(".recent .sign[data-decision=DOES_NOT_CONFORM]") == 1);
    String told = operator.find(".recent svg").getDomAttribute("aria-label");
    assertTrue(String.valueOf(told).contains("1 out of tolerance"), told);
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void seesTheRadiusLiveBeforeItIsRecordedAndThenNoOlderVerdict() throws Exception {
    operator.go(STATION);
    touch(2.9, 1);
    operator.sees(".word", "Too tight");
    operator.page.executeScript(
        "window.words = []; new MutationObserver(() => words.push(document.querySelector('.word')"
            + ".textContent)).observe(document.querySelector('.word'), {childList: true})");
    served.indicator.show(2.733);
    operator.sees(".word", "Good");
    Object seen = operator.page.executeScript("return words.join('|')");
    assertTrue(String.valueOf(seen).contains("At rest"), () -> "" + seen);
    assertFalse(String.valueOf(seen).contains("Too tight"), () -> "" + seen);
  }

  @Test
  void seesWhyAReadingWasNotRecorded() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    served.indicator.show(-2);
    operator.sees(".now", "recorded");
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees(".word", "Not recorded");
    operator.sees(".next", "Wrong face. The bend curves the other way here.");
    operator.sees("#log", "Not recorded: Wrong face");
  }

  @Test
  void seesADeadIndicatorWithoutAVerdict() throws Exception {
    operator.go(STATION);
    touch(2.733, 1);
    operator.sees(".word", "Good");
    served.indicator.close();
    Await.until(() -> operator.count(".instrument[data-dead=true]") == 1);
    operator.sees(".word", "ndicator");
    operator.sees(".of-piece", "since");
    assertFalse(operator.text(".word").contains("Good"));
    assertFalse(operator.text(".next").contains("Leave the rollers"));
  }

  @Test
  void undoesTheLastReadingWithAReasonInTwoTouches() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    touch(2.9, 1);
    touch(2.733, 2);
    operator.press("Undo");
    operator.sees("dialog", "Undo piece 1, middle: why?");
    operator.press("Dirt or scale under a foot");
    operator.sees("#readings", "Excluded");
    operator.sees(".word", "Ready");
    operator.sees(".next", "Measure piece 1, middle");
    operator.sees(".note", "Piece 1, middle, is undone");
    var kept = served.store.readings().exclusionsOfJob(job.id());
    assertEquals("Dirt or scale under a foot", kept.get(0).reason());
    assertEquals("Anna", kept.get(0).by());
    Await.until(() -> "Undo".equals(focused()));
  }

  @Test
  void undoesOnlyTheReadingThatWasShown() throws Exception {
    operator.go(STATION);
    touch(2.733, 1);
    operator.press("Undo");
    operator.sees("dialog", "Undo piece 1, start: why?");
    touch(2.734, 2);
    operator.press("Dirt or scale under a foot");
    operator.sees("dialog .fault", "The last reading is now piece 1, middle");
    assertTrue(served.store.readings().exclusionsOfJob(job.id()).isEmpty());
  }

  @Test
  void goesOnByTheKeyboardAlone() throws Exception {
    operator.go(STATION);
    touch(2.733, 1);
    Await.until(() -> focusOn("Next piece"));
    operator.page.switchTo().activeElement().sendKeys(Keys.ENTER);
    operator.sees(".next", "Don't correct yet");
    operator.sees(".of-piece", "Next: piece 2, start");
  }

  @Test
  void measuresAPieceAgainAndIsAskedBeforeOneIsSkipped() throws Exception {
    operator.go(STATION);
    touch(2.9, 1);
    operator.press("Measure again");
    operator.press("Rolled again");
    operator.sees(".note", "Piece 1, pass 2: measure it again");
    operator.sees(".word", "Ready");
    operator.sees(".next", "Measure piece 1, pass 2, start, 1 of 3.");
    touch(2.733, 2);
    operator.sees(".of-piece", "Piece 1, pass 2, start");
    assertEquals(
        2,
        served
            .store
            .readings()
            .latestOfJob(job.id(), Long.MAX_VALUE, 1)
            .get(0)
            .circumstances()
            .pass());
    operator.page.findElement(By.tagName("body")).sendKeys("+");
    operator.sees(".of-piece", "Next: piece 2, start");
    operator.page.findElement(By.tagName("body")).sendKeys("+");
    operator.sees("dialog", "Skip piece 2?");
    operator.press("Skip piece 2");
    operator.sees(".of-piece", "Next: piece 3, start");
  }

  @Test
  void aReadingThatIsOnlyRepeatedIsNoOtherPass() throws Exception {
    operator.go(STATION);
    touch(2.9, 1);
    operator.press("Measure again");
    operator.press("Only measured again");
    operator.sees(".note", "still the same pass");
    operator.sees(".next", "Measure piece 1, start, 1 of 3.");
    touch(2.733, 2);
    operator.sees(".of-piece", "Piece 1, start");
    var newest = served.store.readings().latestOfJob(job.id(), Long.MAX_VALUE, 2);
    assertEquals(1, newest.get(0).circumstances().pass());
    assertEquals(1, newest.get(0).piece());
    assertEquals(1, served.store.readings().exclusionsOfJob(job.id()).size());
  }

  @Test
  void whatWasTypedIsThereAgainWhenTheFormIsOpenedAgain() throws Exception {
    operator.go(STATION);
    more("Write a note");
    operator.fill("Note", "mandrel gre");
    operator.press("Cancel");
    Await.until(() -> operator.count("dialog") == 0);
    more("Write a note");
    operator.sees("dialog", "What was typed before is here again.");
    assertEquals("mandrel gre", operator.field("Note").getDomProperty("value"));
    operator.fill("Note", "mandrel greased");
    operator.press("Save note");
    operator.sees(".note", "Note saved.");
    more("Write a note");
    assertEquals("", operator.field("Note").getDomProperty("value"));
  }

  private boolean focusOn(String act) {
    operator.page.switchTo().activeElement().sendKeys(Keys.TAB);
    return act.equals(focused());
  }

  private String focused() {
    return String.valueOf(
        operator.page.executeScript("return document.activeElement.dataset.act ?? ''"));
  }

  @Test
  void setsZeroInTwoTouchesSeesTheIndicatorAndIsToldWhyInFreeAir() throws Exception {
    operator.go(STATION);
    operator.press("Zero");
    operator.sees("dialog .live-line", "In free air");
    assertEquals(0, operator.count("#acts [aria-busy]"));
    operator.press("Set zero");
    operator.sees("dialog .fault", "seen to be pushed in");
    served.indicator.show(0.012);
    operator.pressUntil("Set zero", () -> operator.count("dialog") == 0);
    assertEquals(12_000, served.store.gauges().latestZero("A").orElseThrow().valueNm());
    operator.sees(".note", "Zero set: the indicator shows 0.0120 mm");
    Await.until(() -> "Zero".equals(focused()));
    operator.press("OK");
    assertEquals(0, operator.count(".note"));
  }

  @Test
  void recordsACorrectionAndANewLotAndLosesNothingTyped() throws Exception {
    operator.go(STATION);
    more("Correction");
    operator.sees("dialog", "Correction at the rollers");
    operator.fill("Setting before", "25,5");
    operator.press("Record the correction");
    operator.sees("dialog .fault", "both or none");
    assertEquals("25,5", operator.field("Setting before").getDomProperty("value"));
    operator.fill("Setting after", "25.6");
    operator.press("Record the correction");
    operator.sees(".note", "Correction recorded");
    more("New material lot");
    operator.press("Record the lot");
    operator.sees("dialog .fault", "Is missing");
    operator.fill("Name of the new lot", "B-204");
    operator.press("Record the lot");
    operator.sees(".note", "New material lot: B-204");
    List<JobEvent> events =
        served.store.jobs().eventsOfJob(job.id()).stream().filter(JobEvent::startsPhase).toList();
    assertEquals(25.5, events.get(0).settingBefore());
    assertEquals(25.6, events.get(0).settingAfter());
    assertEquals("B-204", events.get(1).materialLot());
  }

  private void more(String choice) throws Exception {
    operator.press("More");
    operator.press(choice);
  }

  @Test
  void changesTheBridgeAndIsToldToSetZero() throws Exception {
    served.store.gauges().add(Some.bridge("short"), "tester");
    operator.go(STATION);
    more("Bridge");
    operator.press("short");
    operator.sees(".word", "The zero belongs to another bridge");
    operator.sees(".next", "Set zero");
    operator.sees("#fitness", "Gauge: short");
  }

  @Test
  void isAskedForANameOnceBeforeTheFirstAct() throws Exception {
    operator.go(STATION);
    touch(2.9, 1);
    operator.page.executeScript("localStorage.removeItem('name')");
    operator.press("Measure again");
    operator.press("Rolled again");
    operator.sees("dialog", "Who is at this screen?");
    operator.fill("Name or initials", "Bert");
    operator.press("Continue");
    operator.sees(".note", "Piece 1, pass 2: measure it again");
    operator.sees("#viewer-name", "Bert");
  }

  @Test
  void choosesTheKeysOfAPedal() throws Exception {
    operator.go(STATION);
    operator.press("Anna");
    operator.field("Undo").sendKeys(Keys.F8);
    operator.field("Next piece").sendKeys("*");
    operator.press("Save");
    operator.sees("dialog .fault:not(:empty)", "the key of “Next piece” too");
    operator.field("Next piece").sendKeys(Keys.DELETE);
    operator.press("Save");
    Await.until(() -> operator.count("dialog") == 0);
    touch(2.733, 1);
    operator.page.findElement(By.tagName("body")).sendKeys(Keys.F8);
    operator.sees("dialog", "Undo piece 1, start: why?");
  }

  @Test
  void readsInInchesAndIsToldWhenThePageIsNotLive() throws Exception {
    operator.go(STATION);
    operator.page.executeScript("localStorage.setItem('unit', 'inch')");
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    touch(2.54, 1);
    operator.sees("#readings", "0.10000");
    operator.sees(".reading .caption", "Radius, in");
    served.web.close();
    operator.sees("#stale", "Not up to date since");
    assertTrue(operator.text("#freshness").contains("Not live"));
    operator.sees(".word", "Not live");
    assertEquals(1, operator.count(".instrument[data-dead=true]"));
  }

  /** Puts the bridge on the piece, waits for the reading, and lifts the bridge again. */
  private void touch(double depthMm, int taken) throws Exception {
    served.indicator.show(depthMm);
    Await.until(() -> served.stations.status("A").counts().readings() == taken);
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees(".now", "in free air");
  }
}
