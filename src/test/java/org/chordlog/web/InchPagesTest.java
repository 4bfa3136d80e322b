package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** A viewer who chose inches sees and enters inches on every page. One inch is exactly 25.4 mm. */
final class InchPagesTest extends ShopTest {
  @BeforeAll
  static void chooseInches() {
    shop.page.executeScript("localStorage.setItem('unit', 'inch')");
  }

  @Test
  void stationsAreInInches() throws Exception {
    shop.go("/");
    shop.sees("#chart svg", "CL 37.");
    shop.sees(".now", "depth −0.2");
    onlyInches();
    shop.go("/station.html?station=A");
    shop.sees("#readings thead", "Radius, in");
    shop.sees(".note-line", "target 37.4016 in");
    shop.sees(".ruler", "37.4016");
    onlyInches();
  }

  @Test
  void theGaugeItsBudgetAndTheAdviceAreInInches() throws Exception {
    shop.go("/gauge.html");
    shop.sees("[aria-label='Uncertainty budget']", "span 7.87");
    shop.sees("[aria-label='Bridges for this job']", "7.874");
    shop.sees("[aria-label='Masters']", "59.0559");
    shop.sees("[aria-label='Calibration']", "readings fit together");
    onlyInches();
  }

  @Test
  void jobsAndTheirFiguresAreInInchesAndFilesSayThatTheyAreNot() throws Exception {
    shop.go("/jobs.html");
    shop.sees("#jobs", "70.8661 in");
    onlyInches();
    shop.goToJob("Canopy hoops");
    shop.sees("#head", "70.3937 in, 71.3386 in");
    shop.sees("section[aria-label='Control charts'] svg", "USL 71.3");
    shop.sees("section[aria-label='Capability'] svg", "Radius, in");
    shop.sees("section[aria-label='Positions compared'] svg", "USL 71.3");
    shop.sees("[data-figure='mean']", "70.87");
    shop.sees(".files", "CSV in mm");
    onlyInches();
  }

  @Test
  void aPointAndItsDepthAreInInches() throws Exception {
    shop.goToJob("Canopy hoops");
    WebElement chart = shop.find("section[aria-label='Control charts'] .picture");
    shop.page.executeScript("arguments[0].focus()", chart);
    chart.sendKeys(Keys.HOME);
    shop.sees(".callout", " in");
    chart.sendKeys(Keys.ENTER);
    shop.sees(".side-item", "depth 0.1");
    shop.counts(".side-item", 3);
    shop.press("Show depth");
    shop.counts(".side svg.trace polyline", 1);
    onlyInches();
  }

  @Test
  void machinesAreInInches() throws Exception {
    shop.go("/machine.html?machine=roller%201");
    shop.sees("[aria-label='Jobs, the newest first']", "70.8661");
    shop.choose("basis", "deviation");
    shop.sees("[aria-label='Short runs'] dl", "Mean, in");
    shop.sees("[aria-label='Short runs'] svg", "Deviation from nominal chart");
    onlyInches();
  }

  @Test
  void theWallAndTheListOfMachinesAreInInches() throws Exception {
    shop.go("/wall.html");
    shop.sees("main", "37.");
    onlyInches();
    shop.go("/machines.html");
    shop.sees("main", "roller 1");
    onlyInches();
  }

  @Test
  void whatWasChangedInAJobIsSaidInInches() throws Exception {
    long id = shop.jobId("Gutter ring");
    ObjectNode form = (ObjectNode) shop.served.json("/api/jobs/" + id);
    form.retain(
        "name",
        "part",
        "machine",
        "station",
        "section",
        "materialLot",
        "measuredFace",
        "plan",
        "specification");
    ObjectNode asked = (ObjectNode) form.path("specification");
    asked.put("targetMm", 1778).put("lowerLimitMm", 1752.6).put("upperLimitMm", 1803.4);
    form.putObject("section").put("kind", "SOLID_ROUND").put("diameterMm", 25.4);
    form.put("why", "customer's drawing").put("confirmed", true);
    assertEquals(200, shop.served.put("/api/jobs/" + id, form.toString()).statusCode());
    shop.go("/job-changes.html?job=" + id);
    shop.sees("main", "target 70 in, 69 in to 71 in");
    shop.sees("main", "diameter 1 in");
    onlyInches();
  }

  @Test
  void aRadiusTooTightForTheBridgeIsRefusedInInches() throws Exception {
    shop.go("/job-form.html?job=" + shop.jobId("Canopy hoops"));
    shop.sees("h1", "Change Canopy hoops");
    shop.fillNamed("specification.targetMm", "2.5");
    shop.fillNamed("specification.lowerLimitMm", "2.4");
    shop.fillNamed("specification.upperLimitMm", "2.6");
    shop.fillNamed("why", "a typing error");
    shop.press("Save");
    shop.sees(
        ".field:has([name='specification.targetMm']) .fault", "at least half its span of 7.874 in");
    onlyInches();
    shop.refusalsWereMeant();
  }

  @Test
  void lengthsAreEnteredInInchesAndKeptToTheNanometre() throws Exception {
    shop.go("/job-form.html");
    shop.sees("legend", "Section");
    assertTrue(shop.text(".field:has([name='specification.targetMm']) .with-unit").endsWith("in"));
    shop.fillNamed("name", "Inch arch");
    shop.fillNamed("section.outsideDiameterMm", "2");
    shop.fillNamed("section.wallMm", "2");
    shop.fillNamed("specification.targetMm", "70.4");
    shop.fillNamed("specification.lowerLimitMm", "75");
    shop.fillNamed("specification.upperLimitMm", "74");
    shop.press("Create job");
    shop.sees(".field:has([name='specification.lowerLimitMm']) .fault", "below 74");
    onlyInches();
    shop.refusalsWereMeant();
    shop.fillNamed("section.wallMm", "0.12");
    shop.fillNamed("specification.lowerLimitMm", "70");
    shop.fillNamed("specification.upperLimitMm", "70.8");
    shop.press("Create job");
    shop.sees("h1", "Inch arch");
    Job made = shop.served.store.jobs().find(shop.jobId("Inch arch")).orElseThrow();
    assertEquals(1788.16, made.specification().targetMm());
    assertEquals(1778.0, made.specification().lowerLimitMm());
  }

  @Test
  void aLengthThatIsNotTouchedStaysAsItWasGivenInMm() throws Exception {
    long id = shop.jobId("Canopy hoops");
    shop.go("/job-form.html?job=" + id);
    shop.sees("h1", "Change Canopy hoops");
    shop.fillNamed("why", "order number");
    shop.fillNamed("part", "drawing 4712");
    shop.press("Save");
    shop.sees("#head", "drawing 4712");
    Job kept = shop.served.store.jobs().find(id).orElseThrow();
    assertEquals(1788.0, kept.specification().lowerLimitMm());
    assertEquals(1800.0, kept.specification().targetMm());
  }

  /** No word mm on the page, said or drawn or read aloud, but at the files, which are records. */
  private static void onlyInches() {
    Object found =
        shop.page.executeScript(
            "const page = document.querySelector('main').cloneNode(true);"
                + "page.querySelectorAll('.files').forEach(each => each.remove());"
                + "const said = [page.textContent, ...[...page.querySelectorAll('*')]"
                + ".flatMap(each => ['aria-label', 'title'].map(name => each.getAttribute(name) ?? ''))];"
                + "return said.flatMap(text => text.match(/.{0,40}\\bmm\\b/g) ?? [])");
    assertEquals(List.of(), found);
  }
}
