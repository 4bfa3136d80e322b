package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** What the quality engineer and maintenance do at the pages, each task in a real browser. */
@Timeout(value = 180, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class QualityPagesTest {
  @TempDir static Path directory;
  private static ShopPages shop;

  @BeforeAll
  static void open() {
    shop = new ShopPages(directory);
  }

  @AfterAll
  static void close() {
    shop.close();
  }

  @AfterEach
  void nothingOnTheConsole() {
    shop.clean();
  }

  @Test
  void everyPageIsAccessibleInLightAndDark() throws Exception {
    shop.go("/jobs.html");
    shop.see("#jobs", "Canopy hoops");
    shop.see("#attention-list", "Gutter ring");
    shop.accessible();
    for (String name : List.of("Canopy hoops", "Gutter ring", "Handrail 42.4", "Test arch")) {
      shop.go("/job.html?job=" + shop.jobId(name));
      shop.see("h1", name);
      shop.see(
          "section[aria-label='Readings']", name.equals("Test arch") ? "No reading" : "Leave out");
      shop.accessible();
    }
    shop.go("/job-form.html");
    shop.see("legend", "Section");
    shop.accessible();
    shop.go("/machines.html");
    shop.see("#machines", "roller 2");
    shop.accessible();
    shop.go("/machine.html?machine=roller%202");
    Await.until(() -> shop.count(".picture svg") == 1);
    shop.see("table", "Gutter ring");
    shop.accessible();
  }

  @Test
  void whatNeedsAttentionComesFirstAndAJobIsFound() throws Exception {
    shop.go("/jobs.html");
    shop.see("#attention-list", "Not in control");
    assertTrue(shop.text("#attention-list > li:first-child").contains("Gutter ring"));
    shop.fill("text", "arch");
    shop.see("#count", "2 jobs");
    shop.choose("state", "closed");
    shop.find("[name='text']").sendKeys(Keys.ENTER);
    shop.see("#count", "1 job");
    shop.click(shop.find("#jobs a"));
    shop.see("h1", "Door frame arches");
  }

  @Test
  void badInputIsExplainedAtItsFieldAndAJobIsOpened() throws Exception {
    shop.go("/job-form.html");
    shop.see("legend", "Section");
    shop.fill("section.outsideDiameterMm", "48.3");
    shop.fill("section.wallMm", "30");
    shop.fill("specification.targetMm", "900");
    shop.fill("specification.lowerLimitMm", "910");
    shop.fill("specification.upperLimitMm", "890");
    shop.click(shop.button("Open the job"));
    shop.see("[name='section.wallMm'] ~ *, .field:has([name='section.wallMm']) .fault", "no bore");
    shop.see(".field:has([name='name']) .fault", "1 to 200 characters");
    shop.see(".field:has([name='specification.lowerLimitMm']) .fault", "upperLimitMm");
    shop.refusalsWereMeant();
    assertEquals("name", shop.page.switchTo().activeElement().getDomAttribute("name"));
    shop.fill("name", "Ramp handrail");
    shop.fill("section.wallMm", "2.6");
    shop.fill("specification.lowerLimitMm", "890");
    shop.fill("specification.upperLimitMm", "910");
    shop.click(shop.button("Open the job"));
    shop.see("h1", "Ramp handrail");
    Job made = shop.served.store.jobs().find(shop.jobId("Ramp handrail")).orElseThrow();
    assertEquals(890.0, made.specification().lowerLimitMm());
    shop.see(".empty", "No reading yet");
  }

  @Test
  void aJobIsDuplicatedClosedAndReopened() throws Exception {
    shop.go("/job-form.html?copy=" + shop.jobId("Handrail 42.4"));
    shop.see("h1", "Duplicate Handrail 42.4");
    shop.fill("name", "Handrail again");
    shop.click(shop.button("Open the job"));
    shop.see("h1", "Handrail again");
    shop.click(shop.button("Close job"));
    shop.find("dialog [name='why']").sendKeys("tried only");
    shop.click(shop.find("dialog button[type=submit]"));
    shop.see("#head", "Reopen job");
    assertEquals(Job.State.CLOSED, state("Handrail again"));
    shop.click(shop.button("Reopen job"));
    shop.click(shop.find("dialog button[type=submit]"));
    shop.see("#head", "Close job");
    assertEquals(Job.State.OPEN, state("Handrail again"));
  }

  private static Job.State state(String name) {
    return shop.served.store.jobs().find(shop.jobId(name)).orElseThrow().state();
  }

  @Test
  void aPointTellsAllByKeyboardAloneAndAReadingIsLeftOutAndTakenIn() throws Exception {
    shop.goToJob("Canopy hoops");
    WebElement chart = shop.find("section[aria-label='Control charts'] .picture");
    shop.page.executeScript("arguments[0].focus()", chart);
    chart.sendKeys(Keys.HOME);
    shop.see(".callout", "Piece 1");
    chart.sendKeys(Keys.ENTER);
    Await.until(() -> shop.count(".side-item") == 3);
    shop.click(shop.button("Show depth"));
    Await.until(() -> shop.count(".side svg.trace polyline") == 1);
    long reading =
        Long.parseLong(String.valueOf(shop.find(".side-item").getDomAttribute("data-reading")));
    WebElement leave = shop.find(".side-item .row button:last-child");
    leave.sendKeys(Keys.ENTER);
    shop.find("dialog [name='reason']").sendKeys("bridge on the weld", Keys.ENTER);
    shop.see(".side-item", "Left out: bridge on the weld");
    assertTrue(excluded(reading));
    shop.click(shop.find(".side-item .row button:last-child"));
    shop.find("dialog [name='reason']").sendKeys("weld was elsewhere", Keys.ENTER);
    Await.until(() -> !excluded(reading));
    Await.until(() -> !shop.text(".side-item").contains("Left out"));
  }

  private static boolean excluded(long reading) {
    return shop.served.store.readings().exclusionsOfJob(shop.jobId("Canopy hoops")).stream()
        .filter(each -> each.readingId() == reading)
        .reduce((older, newer) -> newer)
        .filter(each -> each.excluded())
        .isPresent();
  }

  @Test
  void aBrokenTestIsToldInWords() throws Exception {
    shop.goToJob("Gutter ring");
    shop.see("section", "Test 1: 1 point beyond 3 sigma");
    assertFalse(shop.text("main").contains("BEYOND_LIMIT"));
    WebElement chart = shop.find("section[aria-label='Control charts'] .picture");
    shop.page.executeScript("arguments[0].focus()", chart);
    chart.sendKeys(Keys.END);
    for (int i = 0; i < 80 && !shop.text(".callout").contains("Test "); i++) {
      chart.sendKeys(Keys.ARROW_LEFT);
    }
    assertTrue(shop.text(".callout").contains("Test "), shop.text(".callout"));
  }

  @Test
  void figuresFollowPositionPhaseAndDays() throws Exception {
    shop.goToJob("Canopy hoops");
    shop.see("[data-figure='n']", "60");
    shop.choose("part", "job");
    shop.see("[data-figure='n']", "359");
    shop.choose("part", "phase-1");
    shop.see("[data-figure='n']", "75");
    shop.choose("characteristic", "middle");
    shop.see("[data-figure='n']", "25");
    shop.choose("part", "days");
    shop.choose("from", "2030-01-01");
    shop.see("[data-figure='n']", "0");
  }

  @Test
  void eachFigureSaysHowItIsComputedAndWhereFrom() throws Exception {
    shop.goToJob("Canopy hoops");
    shop.see("section[aria-label='Capability']", "How it is computed");
    String all = shop.text("section[aria-label='Capability']");
    for (String part : List.of("ISO 22514-2", "Bissell", "Ppk, exact interval", "95 % interval")) {
      assertTrue(all.contains(part), part);
    }
  }

  @Test
  void anEventIsRecordedAndLimitsAreFrozen() throws Exception {
    shop.goToJob("Gutter ring");
    shop.click(shop.button("Record an event"));
    Await.until(() -> shop.count("dialog .choices button") == 4);
    shop.click(shop.find("dialog .choices button:nth-child(4)"));
    Await.until(() -> shop.count("dialog [name='note']") == 1);
    shop.click(shop.find("dialog button[type=submit]"));
    shop.see("dialog .fault", "Allowed");
    shop.refusalsWereMeant();
    shop.find("dialog [name='note']").sendKeys("rolls cleaned");
    shop.click(shop.find("dialog button[type=submit]"));
    shop.see("table", "rolls cleaned");
    shop.click(shop.button("Freeze"));
    shop.click(shop.find("dialog button[type=submit]"));
    shop.see("table", "Control limits frozen");
    assertEquals(
        List.of(JobEvent.Kind.NOTE, JobEvent.Kind.LIMITS_FROZEN),
        shop.served.store.jobs().eventsOfJob(shop.jobId("Gutter ring")).stream()
            .map(JobEvent::kind)
            .toList());
  }

  @Test
  void filesAreTakenWithProgress() throws Exception {
    Path files = Files.createDirectories(directory.resolve("files"));
    shop.page.executeCdpCommand(
        "Browser.setDownloadBehavior",
        Map.of("behavior", "allow", "downloadPath", files.toString()));
    shop.goToJob("Canopy hoops");
    long job = shop.jobId("Canopy hoops");
    for (String words :
        List.of("Report, PDF in mm", "Readings, CSV in mm", "Statistics, CSV in mm")) {
      shop.click(shop.button(words));
    }
    Path pdf = files.resolve("job-" + job + "-report.pdf");
    Path readings = files.resolve("job-" + job + "-readings.csv");
    Path figures = files.resolve("job-" + job + "-statistics.csv");
    Await.until(() -> List.of(pdf, readings, figures).stream().allMatch(Files::exists));
    assertEquals(361, Files.readAllLines(readings).size());
    assertTrue(Files.readString(figures).contains("Cpk"));
    assertEquals(
        "%PDF",
        new String(Files.readAllBytes(pdf), 0, 4, java.nio.charset.StandardCharsets.ISO_8859_1));
  }

  @Test
  void maintenanceSeesWhichMachineMovedAndSinceWhen() throws Exception {
    shop.go("/machines.html");
    shop.see("#machines", "Jumped since piece");
    assertTrue(shop.text("#machines > section:first-child").contains("roller 2"));
    shop.click(shop.find("#machines a"));
    shop.see("h1", "roller 2");
    Await.until(() -> shop.count(".picture svg") == 1);
    shop.see("section", "It began on");
    shop.see("table", "Door frame arches");
  }

  @Test
  void whatIsNotThereIsSaid() throws Exception {
    shop.go("/job.html?job=999");
    shop.see("[role=alert]", "There is no such job");
    shop.go("/machine.html?machine=none");
    shop.see("[role=alert]", "There is no such machine");
    shop.refusalsWereMeant();
  }
}
