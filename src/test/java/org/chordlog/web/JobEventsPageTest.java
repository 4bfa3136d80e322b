package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Zero;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** What happened in a job, at its page: recorded, told later, put right, taken back. */
final class JobEventsPageTest extends ShopTest {
  @Test
  void anEventIsRecordedAndLimitsAreFrozen() throws Exception {
    shop.goToJob("Gutter ring");
    shop.press("Record an event");
    shop.counts("dialog .choices button", 4);
    shop.click("dialog .choices button:nth-child(4)");
    shop.counts("dialog [name='note']", 1);
    shop.click("dialog button[type=submit]");
    shop.sees("dialog .fault", "Allowed");
    shop.refusalsWereMeant();
    shop.find("dialog [name='note']").sendKeys("rolls cleaned");
    shop.click("dialog button[type=submit]");
    shop.sees("table", "rolls cleaned");
    shop.press("Fix limits");
    shop.click("dialog button[type=submit]");
    shop.sees("#events table", "Control limits fixed");
    assertEquals(
        List.of(JobEvent.Kind.NOTE, JobEvent.Kind.LIMITS_FROZEN),
        shop.served.store.jobs().eventsOfJob(shop.jobId("Gutter ring")).stream()
            .map(JobEvent::kind)
            .filter(kind -> kind != JobEvent.Kind.MATERIAL_LOT) // of another test
            .toList());
  }

  @Test
  void anEventIsTakenBackAndEveryChangeIsListed() throws Exception {
    shop.goToJob("Handrail 42.4");
    shop.press("Record an event");
    shop.counts("dialog .choices button", 4);
    shop.click("dialog .choices button:nth-child(2)");
    shop.counts("dialog [name='materialLot']", 1);
    shop.find("dialog [name='materialLot']").sendKeys("B-77", Keys.ENTER);
    shop.sees("#events table", "B-77");
    shop.sees("[name='part'] option", "Before the last change: nothing measured since");
    assertNotEquals("0", shop.text("[data-figure='n']"), "what was measured before is still shown");
    shop.press("Take back");
    shop.find("dialog [name='reason']").sendKeys("wrong order", Keys.ENTER);
    shop.sees("#events tr[data-out]", "taken back by quality: wrong order");
    shop.click("#head a[href*='job-changes']");
    shop.sees("h1", "Changes to Handrail 42.4");
    shop.sees("#changes tbody tr:nth-child(1)", "New material lot: taken back");
    shop.sees("#changes tbody tr:nth-child(1)", "wrong order");
    shop.sees("#changes tbody tr:nth-child(2)", "B-77");
    shop.sees("#changes tbody tr:last-child", "Job created");
    shop.findsNothingGrave();
  }

  /** For the readings taken since, too: in the tables, the certificate and the file alike. */
  @Test
  void aLotThatWasNamedWronglyIsPutRight() throws Exception {
    String name = "Gutter ring";
    shop.goToJob(name);
    shop.press("Record an event");
    shop.click("dialog .choices button:nth-child(2)");
    shop.counts("dialog [name='materialLot']", 1);
    shop.find("dialog [name='materialLot']").sendKeys("B-402");
    shop.choose("afterReadingId", "0");
    shop.click("dialog button[type=submit]");
    shop.sees("#events table", "B-402; told later: before the first piece");
    shop.press("Put right");
    shop.sees("dialog", "lot B-402 stays in the record, crossed out");
    assertFalse(shop.text("dialog").contains("[object"), () -> shop.text("dialog"));
    shop.find("dialog [name='materialLot']").sendKeys("B-204");
    shop.find("dialog [name='note']").sendKeys("misread", Keys.ENTER);
    shop.sees(".note", "Put right.");
    shop.sees("#head", "B-204");
    shop.sees("#events tr[data-out]", "taken back by quality: misread");
    String path = "/api/jobs/" + shop.jobId(name);
    String csv = shop.served.get(path + "/readings.csv").body();
    long lines = csv.lines().skip(1).filter(line -> line.contains(",B-204,")).count();
    assertEquals(csv.lines().count() - 1, lines);
    JsonNode lots = shop.served.json(path + "/lots").get("lots");
    assertEquals(1, lots.size());
    assertEquals("B-204", lots.get(0).get("lot").asText());
    shop.findsNothingGrave();
  }

  @Test
  void zeroAndBridgeAreShownWithWhatTheyAreAndNotOfferedToBeTakenBack() throws Exception {
    Job job = shop.served.store.jobs().find(shop.jobId("Canopy hoops")).orElseThrow();
    Recorded now = new Recorded(1_000 * System.currentTimeMillis(), "Jörg");
    long bridge = shop.served.store.gauges().bridges().get(0).id();
    shop.served.store.gauges().add(new Zero(0, job.station(), bridge, -12_345_600, 0, 9, now));
    shop.served.store.jobs().add(event(job, JobEvent.Kind.ZERO, "", now));
    shop.served.store.jobs().add(event(job, JobEvent.Kind.BRIDGE, "short one", now));
    shop.goToJob("Canopy hoops");
    shop.first("#events tr", "Zero set −12.3456 mm on the flat");
    shop.first("#events tr", "Bridge changed short one");
    shop.counts("#events [aria-label^='Take back: Zero set']", 0);
    shop.counts("#events [aria-label^='Take back: Bridge']", 0);
    shop.findsNothingGrave();
    shop.go("/job-changes.html?job=" + job.id());
    shop.sees("#changes", "−12.3456 mm on the flat");
  }

  private static JobEvent event(Job job, JobEvent.Kind kind, String note, Recorded recorded) {
    JobEvent.Content content = new JobEvent.Content(null, null, "", note);
    return new JobEvent(0, job.id(), job.machine(), kind, 0, content, recorded);
  }

  /** Readings of one piece lie between no two moments, and a note says that it was told later. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "moments([]).length | 0",
        "moments([{id: 9, piece: 4}]).join('/') | ,Just now, after piece 4/0,Before the first piece",
        "moments([{id: 9, piece: 4}, {id: 8, piece: 4}, {id: 7, piece: 3}])[1].join() | 7,Before"
            + " piece 4",
        "withMoment({note: '', afterReadingId: ''}, []).afterReadingId | undefined",
        "JSON.stringify(withMoment({note: 'x', afterReadingId: '7'}, [[7, 'Before piece 4']])) |"
            + " {\"note\":\"x; told later: before piece 4\",\"afterReadingId\":7}",
      })
  void whenSomethingHappened(String expression, String expected) {
    shop.go("/health");
    assertEquals(
        expected,
        String.valueOf(
            shop.page.executeAsyncScript(
                ModulesTest.EVALUATED.formatted(expression), "mm", "job-moments")));
  }
}
