package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
  void seesReadingsComeWithDecisionMeaningChartAndFigures() throws Exception {
    operator.go("/");
    operator.sees("#freshness", "Live");
    operator.page.executeScript("window.sameDocument = true");
    for (int taken = 1; taken <= 3; taken++) {
      touch(2.733, taken);
    }
    operator.sees("[data-figure='n']", "3");
    operator.sees(".verdict", "Good");
    operator.sees(".meaning", "Leave the rollers as they are");
    operator.sees(".plus-minus", "±");
    operator.sees("#one-readings td", "2.733");
    Await.until(() -> operator.count("#chart svg") == 1);
    assertEquals(true, operator.page.executeScript("return window.sameDocument"));
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void seesAtTheStationWhatWasTakenAndWhatItMeans() throws Exception {
    operator.go(STATION);
    operator.sees("#fitness", "Indicator connected");
    touch(2.9, 1);
    operator.sees(".verdict", "Too tight");
    operator.sees(".meaning", "it needs less bend");
    operator.sees("#log", "Recorded: 2.900 mm");
    operator.sees("#place", "middle, 2 of 3");
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void seesWhyAReadingWasNotTaken() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    served.indicator.show(-2);
    operator.sees("#phase", "Recorded");
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees("#log", "Not recorded: Wrong face");
  }

  @Test
  void takesTheLastReadingOutWithAReasonInTwoTouches() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    touch(2.733, 1);
    operator.press("Undo");
    operator.press("Dirt or scale under a foot");
    operator.sees("#readings", "Excluded");
    operator.sees("#place", "start, 1 of 3");
    var kept = served.store.readings().exclusionsOfJob(job.id());
    assertEquals("Dirt or scale under a foot", kept.get(0).reason());
    assertEquals("Anna", kept.get(0).by());
  }

  @Test
  void goesToTheNextPieceInOneTouchByTheKeyboardAlone() throws Exception {
    operator.go(STATION);
    operator.sees("#place", "Piece 1");
    Await.until(() -> focusOn("Next piece"));
    operator.page.switchTo().activeElement().sendKeys(Keys.ENTER);
    operator.sees("#place", "Piece 2");
    Await.until(() -> "Next piece".equals(focused()));
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
  void zeroesInTwoTouchesAndIsToldWhyInFreeAir() throws Exception {
    operator.go(STATION);
    operator.press("Zero");
    operator.press("Set zero");
    operator.sees("dialog .fault", "seen to be pushed in");
    served.indicator.show(0.012);
    operator.pressUntil("Set zero", () -> operator.count("dialog") == 0);
    assertEquals(12_000, served.store.gauges().latestZero("A").orElseThrow().valueNm());
  }

  @Test
  void recordsACorrectionAndANewLot() throws Exception {
    operator.go(STATION);
    operator.press("Correction");
    operator.sees("dialog", "Correction at the rollers");
    operator.fill("Setting before", "25,5");
    operator.fill("Setting after", "25.6");
    operator.press("Record the correction");
    operator.sees(".note", "Correction recorded");
    operator.press("New lot");
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

  @Test
  void changesTheBridgeAndIsToldToZero() throws Exception {
    served.store.gauges().add(Some.bridge("short"), "tester");
    operator.go(STATION);
    operator.press("Bridge");
    operator.press("short");
    operator.sees("#trouble", "The zero belongs to another bridge");
    operator.sees("#fitness", "Gauge: short");
  }

  @Test
  void isAskedForANameOnceBeforeTheFirstAct() throws Exception {
    operator.go(STATION);
    operator.page.executeScript("localStorage.removeItem('name')");
    operator.press("Next piece");
    operator.sees("dialog", "Who is at this screen?");
    operator.fill("Name or initials", "Bert");
    operator.press("Continue");
    operator.sees("#place", "Piece 2");
    operator.press("Next piece");
    operator.sees("#place", "Piece 3");
    operator.sees("#viewer-name", "Bert");
  }

  @Test
  void readsInInchesAndIsToldWhenThePageIsNotLive() throws Exception {
    operator.go(STATION);
    operator.page.executeScript("localStorage.setItem('unit', 'inch')");
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    touch(2.54, 1);
    operator.sees("#readings", "0.10000");
    operator.sees("#headline .unit", "in");
    served.web.close();
    operator.sees("#stale", "Not up to date since");
    assertTrue(operator.text("#freshness").contains("Not live"));
  }

  /** Puts the bridge on the piece, sees the reading come, and lifts the bridge again. */
  private void touch(double depthMm, int rows) throws Exception {
    served.indicator.show(depthMm);
    Await.until(() -> operator.count("[data-reading]") == rows);
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees("#phase", "In free air");
  }
}
