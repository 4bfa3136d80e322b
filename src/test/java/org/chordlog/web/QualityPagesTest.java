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
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** What the quality engineer and maintenance do at the pages, each task in a real browser. */
final class QualityPagesTest extends ShopTest {
  @Test
  void everyPageIsAccessibleInLightAndDark() throws Exception {
    shop.go("/jobs.html");
    shop.sees("#jobs", "Canopy hoops");
    shop.sees("#attention-list", "Gutter ring");
    shop.findsNothingGrave();
    for (String name : List.of("Canopy hoops", "Gutter ring", "Handrail 42.4", "Test arch")) {
      shop.go("/job.html?job=" + shop.jobId(name));
      shop.sees("h1", name);
      shop.sees(
          "section[aria-label='Readings']", name.equals("Test arch") ? "No reading" : "Exclude");
      shop.findsNothingGrave();
    }
    shop.go("/job-form.html");
    shop.sees("legend", "Section");
    shop.findsNothingGrave();
    shop.go("/machines.html");
    shop.sees("#machines", "roller 2");
    shop.findsNothingGrave();
    shop.go("/machine.html?machine=roller%202");
    shop.counts(".picture svg", 3);
    shop.sees("table", "Gutter ring");
    shop.findsNothingGrave();
  }

  @Test
  void whatNeedsAttentionComesFirstAndAJobIsFound() throws Exception {
    shop.go("/jobs.html");
    shop.sees("#attention-list", "Not in control");
    assertTrue(shop.text("#attention-list > li:first-child").contains("Gutter ring"));
    shop.fillNamed("text", "arch");
    shop.sees("#count", "2 jobs");
    shop.choose("state", "closed");
    shop.find("[name='text']").sendKeys(Keys.ENTER);
    shop.sees("#count", "1 job");
    shop.click("#jobs a");
    shop.sees("h1", "Door frame arches");
  }

  @Test
  void badInputIsExplainedAtItsFieldAndAJobIsOpened() throws Exception {
    shop.go("/job-form.html");
    shop.sees("legend", "Section");
    shop.fillNamed("section.outsideDiameterMm", "48.3");
    shop.fillNamed("section.wallMm", "30");
    shop.fillNamed("specification.targetMm", "900");
    for (String typed : List.of("twelve", "1/2", "-12", "0", "1,250")) {
      shop.fillNamed("tolerance", typed);
      shop.press("Create job");
      shop.sees(".field:has([name='tolerance']) .fault", "Is not a tolerance. Allowed: a number");
    }
    shop.fillNamed("tolerance", "\u00b1 12");
    assertEquals("888", shop.find("[name='specification.lowerLimitMm']").getAttribute("value"));
    shop.fillNamed("specification.lowerLimitMm", "910");
    shop.fillNamed("specification.upperLimitMm", "890");
    shop.press("Create job");
    shop.sees("[name='section.wallMm'] ~ *, .field:has([name='section.wallMm']) .fault", "no bore");
    shop.sees(".field:has([name='name']) .fault", "1 to 200 characters");
    shop.sees(".field:has([name='specification.lowerLimitMm']) .fault", "not below the upper");
    shop.refusalsWereMeant();
    assertEquals("name", shop.page.switchTo().activeElement().getDomAttribute("name"));
    shop.fillNamed("name", "Ramp handrail");
    shop.fillNamed("section.wallMm", "2.6");
    shop.fillNamed("specification.lowerLimitMm", "890");
    shop.fillNamed("specification.upperLimitMm", "910");
    shop.press("Create job");
    shop.sees("h1", "Ramp handrail");
    Job made = shop.served.store.jobs().find(shop.jobId("Ramp handrail")).orElseThrow();
    assertEquals(890.0, made.specification().lowerLimitMm());
    shop.sees(".empty", "No reading yet");
  }

  @Test
  void aNameThatAnotherJobHasIsAskedAbout() throws Exception {
    String handrail = "/job-form.html?copy=" + shop.jobId("Handrail 42.4");
    shop.go(handrail);
    shop.sees("h1", "Duplicate Handrail 42.4");
    shop.fillNamed("name", "Stair flight");
    shop.press("Create job");
    shop.sees("h1", "Stair flight");
    shop.go(handrail);
    shop.sees("h1", "Duplicate Handrail 42.4");
    shop.fillNamed("name", "Stair flight");
    shop.press("Create job");
    shop.sees("dialog", "There is a job of this name already");
    shop.findsNothingGrave();
    shop.refusalsWereMeant();
    shop.click("dialog button[type=submit]");
    shop.sees("h1", "Stair flight");
    assertEquals(2, ofThatName("Stair flight"));
  }

  private long ofThatName(String name) {
    return shop.served.store.jobs().list(Long.MAX_VALUE, 200).stream()
        .filter(each -> each.name().equals(name))
        .count();
  }

  @Test
  void aJobIsDuplicatedClosedAndReopened() throws Exception {
    shop.go("/job-form.html?copy=" + shop.jobId("Handrail 42.4"));
    shop.sees("h1", "Duplicate Handrail 42.4");
    shop.fillNamed("name", "Handrail again");
    shop.press("Create job");
    shop.sees("h1", "Handrail again");
    shop.press("Close job");
    shop.find("dialog [name='why']").sendKeys("tried only");
    shop.click("dialog button[type=submit]");
    shop.sees("#head", "Reopen job");
    assertEquals(Job.State.CLOSED, state("Handrail again"));
    shop.press("Reopen job");
    shop.click("dialog button[type=submit]");
    shop.sees("#head", "Close job");
    assertEquals(Job.State.OPEN, state("Handrail again"));
    String elsewhere = "/api/jobs/" + shop.jobId("Handrail again") + "/close";
    assertEquals(200, shop.served.post(elsewhere, "{}").statusCode());
    shop.sees("#head", "Reopen job");
  }

  private static Job.State state(String name) {
    return shop.served.store.jobs().find(shop.jobId(name)).orElseThrow().state();
  }

  @Test
  void figuresFollowPositionPhaseAndDaysAndEachSaysHowItIsComputedAndWhereFrom() throws Exception {
    shop.goToJob("Canopy hoops");
    shop.sees("[data-figure='n']", "60");
    shop.sees("section[aria-label='Capability']", "How it is computed");
    String all = shop.text("section[aria-label='Capability']");
    for (String part : List.of("ISO 22514-2", "Bissell", "Ppk, exact interval", "95 % interval")) {
      assertTrue(all.contains(part), part);
    }
    assertFalse(shop.text("td.interval").contains(" at 95 %"), "said by the head of the column");
    shop.choose("part", "job");
    shop.sees("[data-figure='n']", "359");
    shop.choose("part", "phase-1");
    shop.sees("[data-figure='n']", "75");
    shop.choose("characteristic", "middle");
    shop.sees("[data-figure='n']", "25");
    shop.choose("part", "days");
    shop.choose("from", "2030-01-01");
    shop.sees("[data-figure='n']", "0");
  }

  @Test
  void filesAreTakenWithProgress() throws Exception {
    Path files = Files.createDirectories(directory.resolve("files"));
    Blink.run(
        shop.page,
        "Browser.setDownloadBehavior",
        Map.of("behavior", "allow", "downloadPath", files.toString()));
    shop.goToJob("Canopy hoops");
    long job = shop.jobId("Canopy hoops");
    Path pdf = files.resolve("job-" + job + "-report.pdf");
    Path readings = files.resolve("job-" + job + "-readings.csv");
    Path figures = files.resolve("job-" + job + "-statistics.csv");
    taken("Report, PDF in mm", pdf);
    taken("Readings, CSV in mm", readings);
    taken("Statistics, CSV in mm", figures);
    Object taken =
        shop.page.executeScript(
            "return performance.getEntriesByType('resource').map((e) => e.name)"
                + ".find((name) => name.includes('report.pdf'))");
    assertTrue(String.valueOf(taken).matches(".*&token=[a-z0-9-]{8,64}"), () -> "" + taken);
    assertEquals(362, Files.readAllLines(readings).size()); // names, readings, seal
    assertTrue(Files.readString(figures).contains("Cpk"));
    shop.page.executeScript("localStorage.setItem('decimal', 'comma')");
    Files.delete(readings);
    taken("Readings, CSV in mm", readings);
    assertTrue(Files.readAllLines(readings).get(0).startsWith("id;station;"));
    assertEquals(
        "%PDF",
        new String(Files.readAllBytes(pdf), 0, 4, java.nio.charset.StandardCharsets.ISO_8859_1));
  }

  private static void taken(String words, Path file) throws Exception {
    shop.press(words);
    Await.until(() -> Files.exists(file), () -> words + ": " + shop.text(".progress"));
  }

  /**
   * A dialog higher than the screen begins at its first field, though the middle of it scrolls,
   * which a browser would give the focus.
   */
  @Test
  void whereNobodySignsInThePageOfAccountsSaysSoAndAHighDialogBeginsAtItsTop() throws Exception {
    shop.go("/accounts.html");
    shop.sees(".care-note", "People do not sign in at this service");
    shop.findsNothingGrave();
    shop.looksAt(844, 390);
    shop.press("Add a token");
    shop.sees("dialog", "Days that it is valid");
    assertEquals("name", shop.page.executeScript("return document.activeElement.name"));
    shop.looksAt(1280, 800);
  }

  @Test
  void ordersOfAFileAreLookedAtAndAFileWithoutHeadingsIsNamed() throws Exception {
    shop.go("/import-orders.html");
    choose("order;part\nA 7;hoop\n");
    shop.sees("#orders", "can be created");
    assertTrue(shop.text("#orders td").contains("line 2"), shop.text("#orders"));
    shop.findsNothingGrave();
    choose("hello;world\nA 7;hoop\n");
    shop.sees(".fault.general", "Hello, world are not columns of a file of orders.");
  }

  private static void choose(String orders) throws Exception {
    Path file = Files.writeString(directory.resolve("orders.csv"), orders);
    shop.find("#file").sendKeys(file.toString());
    shop.press("Look at the orders");
  }
}
