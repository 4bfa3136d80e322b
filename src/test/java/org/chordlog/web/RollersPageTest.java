package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Plan;
import org.chordlog.measure.RollerScale;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/** Advice on the rollers where the operator looks, and recording what was done. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
final class RollersPageTest extends OperatorTest {
  private static final String MACHINE = "/machine.html?machine=three-roll%20bender";

  /** Depths on the bridge of 200 mm that read about 1810 mm and 1800 mm on the centreline. */
  private static final double TOO_OPEN = 2.712;

  private static final double ON_TARGET = 2.727;

  private boolean described;

  /** What was learnt of the dial is not for the next job. */
  @AfterEach
  void forgetTheDial() {
    if (described) {
      giveUp();
    }
  }

  /** With one position, so that each reading is a piece. */
  @Override
  Job ordered() {
    return onePosition(super.ordered());
  }

  private static Job onePosition(Job job) {
    Job.Inspection usual = job.inspection();
    Plan middle = new Plan(List.of("middle"), new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1));
    return Job.opened(
        job.order(),
        job.workplace(),
        new Job.Inspection(usual.section(), usual.measuredFace(), usual.specification(), middle),
        job.openedAtMicros());
  }

  /** One unit of the dial is 81 mm of radius at 1800 mm; a higher number bends tighter. */
  private void dialIsDescribed() throws Exception {
    described = true;
    var answer =
        served.post(
            "/api/machines/three-roll%20bender/scales",
            """
            {"name": "dial", "unit": "mm", "step": 0.01, "tighter": "HIGHER",
             "radiusChangeMm": -81, "atRadiusMm": 1800}""");
    assertEquals(201, answer.statusCode(), answer::body);
  }

  private void setUpAt(double dial) throws Exception {
    String body = "{\"kind\": \"SET_UP\", \"settingAfter\": " + dial + "}";
    assertEquals(201, served.post("/api/stations/A/events", body).statusCode());
  }

  @Test
  @Order(1)
  void withoutAScaleTheDirectionIsSaidAndTheNumbersAreAskedForUntilItIsDescribed()
      throws Exception {
    measured(TOO_OPEN, 3);
    operator.go(STATION);
    operator.sees(".instruction", "Tighten the radius by");
    operator.press("Record correction");
    operator.fill("Setting before", "4");
    operator.fill("Setting after", "4");
    operator.press("Record the correction");
    operator.sees("dialog", "Both numbers are the same: nothing moved.");
    operator.press("No, let me change the numbers");
    operator.fill("Setting after", "4.1");
    operator.press("Record the correction");
    operator.sees(".note", "Correction recorded");
    assertEquals(4.1, corrections().get(0).settingAfter());
    theScaleIsDescribed();
  }

  private void theScaleIsDescribed() throws Exception {
    operator.go(MACHINE);
    operator.sees("section[aria-label=Rollers]", "not described yet");
    operator.press("Describe the scale");
    operator.fill("Name", "axis 2");
    operator.press("Save the scale");
    operator.sees("dialog .fault", "Is missing");
    operator.fill("Unit", "mm");
    operator.fill("One unit changes the radius by about", "80");
    operator.fill("at a radius of", "1800");
    operator.press("Save the scale");
    operator.sees("dialog .fault", "Is needed to say what a unit does");
    operator.page.executeScript("document.querySelector('dialog [name=tighter]').value = 'HIGHER'");
    operator.fill("Least step", "-1");
    operator.press("Save the scale");
    operator.sees("dialog .fault:not(:empty)", "bove 0");
    operator.fill("Least step", "0,01");
    operator.press("Save the scale");
    operator.sees(".note", "Amounts are said on the axis 2, in mm");
    operator.sees("section[aria-label=Rollers] .facts", "axis 2, in mm");
    RollerScale kept = served.store.machines().scales("three-roll bender").get(0);
    assertEquals(0.01, kept.motion().step());
    assertNull(kept.motion().lostMotion());
    assertTrue(Objects.requireNonNull(kept.gain()).perMmPerUnit() > 0);
    operator.findsNothingGrave();
  }

  @Test
  @Order(2)
  void nothingIsAdvisedBesideAGaugeThatCantBeReliedOn() throws Exception {
    measured(TOO_OPEN, 3);
    operator.go(STATION);
    operator.sees(".instruction", "Tighten by");
    served.store.gauges().add(Some.bridge("short"), "tester");
    String body = "{\"bridgeId\": " + served.store.gauges().bridges().get(1).id() + "}";
    assertEquals(200, served.post("/api/stations/A/bridge", body).statusCode());
    operator.counts("#record button", 0);
    operator.go(MACHINE);
    operator.sees("section[aria-label=Rollers]", "No advice: ");
    giveUp(); // with that bridge on its station, and that scale
  }

  /** The advised number is filled in and the one before is asked for: two taps, nothing typed. */
  @Test
  void theAdvisedCorrectionIsRecordedInTwoTaps() throws Exception {
    dialIsDescribed();
    setUpAt(25.6);
    measured(TOO_OPEN, 2);
    operator.go(STATION);
    touch(TOO_OPEN, 3);
    operator.sees("#record", "Set the dial to 25.7");
    operator.sees("#rollers-in-full", "Pieces out of tolerance: now");
    operator.sees("#rollers-in-full", "no correction changes that");
    operator.sees(".care-line", "rollers stopped and the drive locked out");
    operator.press("Record correction");
    operator.sees("dialog", "The dial showed 25.6 after the last correction.");
    operator.sees("dialog .care-note", "Rollers stopped and drive locked out?");
    operator.press(yes());
    operator.sees(".note", "Correction recorded");
    JobEvent kept = corrections().get(0);
    assertEquals(25.6, kept.settingBefore());
    assertEquals(25.7, Objects.requireNonNull(kept.settingAfter()), 0.05);
    operator.sees("#rollers-in-full", "Corrected: measure the next piece.");
    assertEquals(0, operator.count("#record button"));
    operator.leavesNothingOnTheConsole();
  }

  @Test
  void anotherNumberThanExpectedIsAskedAboutBeforeItIsRecorded() throws Exception {
    dialIsDescribed();
    setUpAt(25.6);
    measured(TOO_OPEN, 3);
    operator.go(STATION);
    operator.press("Record correction");
    operator.press("No, or I moved it by another amount");
    operator.sees("dialog .hint", "After the last correction it showed 25.6. Read it again.");
    operator.fill("Dial before", "25,70");
    Await.until(() -> typed("Dial after").startsWith("25.8"));
    operator.press("Record the correction");
    operator.sees("dialog", "were the rollers moved in between?");
    operator.press("No, let me change the numbers");
    operator.sees("dialog .fault", "Nothing is recorded yet.");
    assertTrue(corrections().isEmpty());
    operator.press("Record the correction");
    operator.press("Yes, record it like that");
    operator.sees(".note", "Correction recorded");
    assertEquals(25.7, corrections().get(0).settingBefore());
    operator.sees("#rollers", "The dial read 25.7 before this correction, but 25.6 after");
    operator.press("Seen");
    Await.until(() -> !operator.text("#rollers").contains("The dial read 25.7 "));
  }

  /**
   * After a job is chosen nobody knows where the scale stands; a slip is seen by the job before.
   */
  @Test
  void aNumberFarFromThatOfTheJobBeforeIsAskedAbout() throws Exception {
    dialIsDescribed();
    measured(TOO_OPEN, 1);
    setUpAt(25.6);
    correctionToldLate();
    job = served.selected(ordered());
    operator.go(STATION);
    touch(TOO_OPEN, 2);
    operator.press("More");
    operator.press("Correction");
    operator.sees("dialog .hint", "Last recorded on this machine: 25.6.");
    operator.fill("Dial before", "256");
    operator.fill("Dial after", "256.1");
    operator.press("Record the correction");
    operator.sees("dialog", "was 25.6, and 256 now: is every digit right?");
    operator.press("No, let me change the numbers");
    operator.fill("Dial before", "26");
    operator.fill("Dial after", "26.1");
    operator.press("Record the correction");
    operator.sees(".note", "Correction recorded");
    assertEquals(26, corrections().get(0).settingBefore());
  }

  /** It was before the first piece, so the scale showed that before the set-up. */
  private void correctionToldLate() throws Exception {
    String body =
        """
        {"kind": "CORRECTION", "settingBefore": 20, "settingAfter": 21, "afterReadingId": 0}""";
    assertEquals(201, served.post("/api/jobs/" + job.id() + "/events", body).statusCode());
  }

  @Test
  void aCorrectionThatNobodyRecordedIsAskedAboutAndTakesItsPlaceInTime() throws Exception {
    dialIsDescribed();
    setUpAt(25.6);
    measured(TOO_OPEN, 8);
    operator.go(STATION);
    touch(ON_TARGET, 9);
    operator.sees("#rollers", "nothing was recorded: did you correct?");
    operator.press("Yes");
    operator.press(yes());
    operator.sees(".note", "Correction recorded");
    List<Integer> before =
        served.store.readings().ofJob(job.id(), 0, 20).stream()
            .filter(each -> each.id() <= corrections().get(0).afterReadingId())
            .map(each -> each.piece())
            .toList();
    assertEquals(List.of(1, 2, 3, 4, 5, 6, 7, 8), before);
    Await.until(() -> !operator.text("#rollers").contains("did you correct?"));
    operator.sees("#rollers-in-full", "less than");
  }

  private List<JobEvent> corrections() {
    return served.store.jobs().eventsOfJob(job.id()).stream()
        .filter(each -> each.kind() == JobEvent.Kind.CORRECTION)
        .toList();
  }

  private String typed(String label) throws Exception {
    return String.valueOf(operator.field(label).getDomProperty("value"));
  }

  private String yes() throws Exception {
    Await.until(() -> operator.text("dialog button").contains("Yes: "));
    return operator
        .text("dialog button")
        .lines()
        .filter(l -> l.startsWith("Yes: "))
        .findFirst()
        .orElseThrow();
  }

  /** So many pieces of that depth, one after the other, while nobody looks at the page. */
  private void measured(double depthMm, int pieces) throws Exception {
    for (int taken = 1; taken <= pieces; taken++) {
      served.indicator.show(depthMm);
      int before = taken;
      Await.until(() -> taken() == before);
      served.indicator.show(TerminalIndicator.FREE_MM);
      Await.until(served::free);
    }
  }
}
