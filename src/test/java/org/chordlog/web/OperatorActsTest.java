package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.JobEvent;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** What the operator does at the station, task by task. */
final class OperatorActsTest extends OperatorTest {

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

  /** What is measured meanwhile is no piece: the job's last one is not to be undone for it. */
  @Test
  void changesNoPieceOfTheJobWhileTheGaugeIsStudied() throws Exception {
    operator.go(STATION);
    touch(2.9, 1);
    operator.counts("[data-act='Undo']:enabled", 1);
    String plan =
        "{\"station\": \"A\", \"name\": \"hoops\", \"kind\": \"CROSSED\", \"repeats\": 2, \"seed\": 7,"
            + " \"parts\": [\"1\", \"2\"], \"operators\": [\"Ann\", \"Bo\"], \"jobId\": %d}";
    StudyHands.posted(served, "/api/stations/A/on-masters", "{\"active\": true}");
    StudyHands unused = StudyHands.start(served, plan.formatted(job.id()));
    operator.sees(".acts-why", "Meanwhile the job rests");
    assertEquals("Zero\nMore", operator.text("#acts button:not([hidden])"));
    assertEquals(0, operator.count("#record .button"));
    operator.find("body").sendKeys("-");
    operator.sees(".note", "Meanwhile the job rests");
    assertEquals(0, operator.count("dialog"));
    more("Go on with the study");
    operator.sees(".note", "Back to the study.");
    operator.press("More");
    operator.sees("dialog", "Job, bridge and masters come after it");
    assertEquals("The study’s page, Gauge, Wall view", choices());
    operator.findsNothingGrave();
    operator.press("The study’s page");
    operator.sees("#study", "Pause");
    giveUp();
  }

  /** What changes a closed job would be refused: it is not offered. */
  @Test
  void isOfferedNothingThatAClosedJobRefuses() throws Exception {
    operator.go(STATION);
    touch(2.9, 1);
    StudyHands.posted(served, "/api/jobs/" + job.id() + "/close", "{}");
    operator.sees("[data-act='Choose the job']", "Choose the job");
    operator.counts("[data-act='Undo']:disabled", 1);
    operator.press("More");
    operator.sees("dialog", "Wall view");
    assertEquals(
        "Bridge, Choose the job, Who measures, Measure masters, Gauge, Wall view", choices());
  }

  /** Of the open dialog, without their smaller words and keys. */
  private String choices() {
    return String.valueOf(
        operator.page.executeScript(
            "return [...document.querySelectorAll('dialog .button')].filter((e) => e.querySelector('kbd, small'))"
                + ".map((e) => e.firstChild.textContent).join(', ')"));
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

  /**
   * A question with answers is answered by the keys of a pedal alone, and by a keypad's numbers.
   */
  @Test
  void aPedalAloneOrAKeypadAnswersWhyAReadingIsUndone() throws Exception {
    operator.go(STATION);
    touch(2.733, 1);
    undone("-", "+", "-");
    assertEquals("Dirt or scale under a foot", reasonOfUndo(0));
    touch(2.733, 2);
    undone("-", "3");
    assertEquals("Wrong place on the piece", reasonOfUndo(1));
  }

  /** The first key opens the question; answers count once a bouncing pedal has come to rest. */
  private void undone(String key, String... answers) throws Exception {
    operator.page.findElement(By.tagName("body")).sendKeys(key);
    operator.sees("dialog", "Undo piece 1");
    Object opened = operator.page.executeScript("return performance.now()");
    Await.until(
        () ->
            Boolean.TRUE.equals(
                operator.page.executeScript(
                    "return performance.now() > arguments[0] + 700", opened)));
    for (String answer : answers) {
      operator.page.switchTo().activeElement().sendKeys(answer);
    }
    operator.counts("dialog", 0);
    operator.sees(".note", "is undone");
    operator.press("OK");
  }

  /**
   * The two most common ones are the last of six, so that a pedal's numbers stay what they were.
   */
  @Test
  void aWrongZeroAndAPieceMeasuredTwiceAreReasonsToChoose() throws Exception {
    operator.go(STATION);
    touch(2.733, 1);
    undone("-", "5");
    assertEquals("The zero was wrong", reasonOfUndo(0));
    touch(2.733, 2);
    undone("-", "6");
    assertEquals("Same piece measured twice", reasonOfUndo(1));
  }

  private String reasonOfUndo(int which) {
    return served.store.readings().exclusionsOfJob(job.id()).get(which).reason();
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
    operator.counts("dialog", 0);
    more("Write a note");
    operator.sees("dialog", "What was typed before is here again.");
    assertEquals("mandrel gre", operator.field("Note").getDomProperty("value"));
    operator.fill("Note", "mandrel greased");
    operator.press("Save note");
    operator.sees(".note", "Note saved.");
    more("Write a note");
    assertEquals("", operator.field("Note").getDomProperty("value"));
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
    operator.sees(".note", "Zero set: 0.0120 mm on the flat");
    Await.until(() -> "Zero".equals(focused()));
    operator.press("OK");
    assertEquals(0, operator.count(".note"));
    giveUp();
  }

  /** As in an engine that gives a pressed button no focus, but to what it stands in. */
  @Test
  void whatWasPressedHasTheFocusAfterTheDialogAlsoWithoutHavingHadIt() throws Exception {
    operator.go(STATION);
    operator.counts("[data-act='More']", 1);
    operator.page.executeScript(
        "document.querySelector('main').focus(); document.querySelector('[data-act=More]').click()");
    operator.sees("dialog", "Write a note");
    operator.press("Cancel");
    Await.until(() -> "More".equals(focused()));
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
    operator.sees("#job", "lot B-204");
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
  void isAskedWhetherABentPieceIsReallyTheFlat() throws Exception {
    operator.go(STATION);
    served.indicator.show(1.3);
    operator.press("Zero");
    operator.pressUntil("Set zero", () -> operator.count("dialog") == 0);
    operator.sees(".note", "1.300 mm higher over free air than at the last zero");
    operator.sees(".note", "Lift the bridge and set zero again, on the flat.");
    operator.sees(".word", "Zero in doubt");
    operator.go("/gauge.html");
    operator.sees("#gauge .needs", "is this really the flat?");
    operator.sees("[aria-label='Zeros, the newest first']", "is this really the flat?");
    operator.findsNothingGrave();
    giveUp();
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
    giveUp();
  }
}
