package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.capture.Direction;
import org.chordlog.link.TcpSettings;
import org.chordlog.station.FeedSettings;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationSettings;
import org.chordlog.station.StationStatus.LinkState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.support.ui.Select;

/** A station's settings are changed and a station removed at the page, in a browser. */
final class StationSettingsPageTest extends BrowserTest {
  private static final String PAGE = "/station-settings.html?station=A";
  private static final String STEP = "[name='indicator.resolutionMm']";
  @TempDir Path directory;

  private static Visitor atSettings(Served served) throws Exception {
    Visitor fitter = new Visitor(served, browser, "Carl");
    fitter.go(PAGE);
    fitter.sees("#title", "Settings of A");
    fitter.counts(STEP, 1);
    return fitter;
  }

  /** The file has what the service goes by. */
  private static StationSettings inStep(Served served) {
    List<StationSettings> file = StationFile.read(served.stationFile);
    assertEquals(served.stations.settings(), file);
    return file.get(0);
  }

  private static void directionIsNotSaid(Served served) throws Exception {
    ObjectNode body = (ObjectNode) served.json("/api/stations/A/settings");
    ((ObjectNode) body.get("station")).putNull("direction");
    assertEquals(200, served.put("/api/stations/A/settings", body.toString()).statusCode());
    assertNull(inStep(served).direction());
  }

  @Test
  void aSettingIsChangedADirectionChosenThatNobodyHasSaidAndTheStationReadsOnByThem()
      throws Exception {
    try (Served served = new Served(directory)) {
      long job = served.job().id();
      directionIsNotSaid(served);
      Visitor fitter = atSettings(served);
      fitter.sees(".field:has([name='direction'])", "not said yet");
      fitter.findsNothingGrave();
      new Select(fitter.field("Pushing the plunger in")).selectByVisibleText("counts down");
      fitter.fill("Permissible error ±", "0.004");
      fitter.fill("At rest for", "0.6");
      fitter.press("Save and try");
      fitter.sees("#title", "A · three-roll bender");
      Await.until(() -> served.stations.status("A").link() == LinkState.OPEN);
      Await.until(() -> served.stations.status("A").counts().samples() > 10);
      fitter.sees(".now", "Now: ");
      StationSettings station = inStep(served);
      assertEquals(0.004, station.indicator().permissibleErrorMm());
      assertEquals(0.6, station.capture().restSeconds());
      assertEquals(Direction.COUNTS_DOWN, station.direction());
      assertEquals(job, served.stations.status("A").jobId());
      fitter.leavesNothingOnTheConsole();
    }
  }

  private static void anotherChanges(Served served) throws Exception {
    ObjectNode body = (ObjectNode) served.json("/api/stations/A/settings");
    ((ObjectNode) body.at("/station/indicator")).put("permissibleErrorMm", 0.006);
    ((ObjectNode) body.at("/station")).putObject("capture").put("restSeconds", 0.7);
    assertEquals(200, served.put("/api/stations/A/settings", body.toString()).statusCode());
  }

  private static void aWrongValueIsRefusedAtItsFieldAndNothingChanges(Served served, Visitor fitter)
      throws Exception {
    String before = Files.readString(served.stationFile);
    fitter.fill("Step", "-1");
    fitter.press("Save and try");
    fitter.counts(STEP + "[aria-invalid]", 1);
    assertEquals(1, fitter.count("[aria-invalid]"));
    assertTrue(fitter.find(STEP).equals(browser.switchTo().activeElement()));
    fitter.sees(".field:has(" + STEP + ") .fault", "Allowed: ");
    fitter.findsNothingGrave();
    fitter.fill("Step", "0.001");
    fitter.fill("At rest for", "soon");
    fitter.press("Save and try");
    fitter.counts("[name='capture.restSeconds'][aria-invalid]", 1);
    assertEquals(before, Files.readString(served.stationFile));
    assertEquals(LinkState.OPEN, served.stations.status("A").link());
  }

  @Test
  void aFormIsRefusedWithAWrongValueAndSaysWhatChangedWhereAnotherOvertookIt() throws Exception {
    try (Served served = new Served(directory)) {
      Visitor fitter = atSettings(served);
      aWrongValueIsRefusedAtItsFieldAndNothingChanges(served, fitter);
      fitter.fill("At rest for", "");
      fitter.fill("Step", "0.002");
      fitter.fill("Permissible error ±", "0.004");
      anotherChanges(served);
      fitter.press("Save and try");
      fitter.sees(".fault.general", "At rest for was empty, is now 0.7 s");
      fitter.sees(".fault.general", "Permissible error ± was 0.003 mm, is now 0.006 mm");
      assertEquals("0.002", fitter.find(STEP).getDomProperty("value"));
      fitter.findsNothingGrave();
      assertEquals(0.006, inStep(served).indicator().permissibleErrorMm());
      fitter.press("Save and try");
      fitter.sees("#title", "A · three-roll bender");
      StationSettings station = inStep(served);
      assertEquals(0.002, station.indicator().resolutionMm());
      assertEquals(0.004, station.indicator().permissibleErrorMm());
      assertEquals(0.7, station.capture().restSeconds());
      fitter.leavesNothingOnTheConsole();
    }
  }

  /** Of a section that runs through, with an encoder on a port of its own. */
  @Test
  void aLengthOnALinkOfItsOwnIsSetUp() throws Exception {
    try (Served served = new Served(directory)) {
      Visitor fitter = atSettings(served);
      fitter.click("details:has([name='feed.length']) summary");
      new Select(fitter.find("[name='capture.mode']")).selectByValue("passing");
      new Select(fitter.find("[name='feed.length']")).selectByValue("link");
      new Select(fitter.find("[name='feed.link.kind']")).selectByValue("tcp");
      fitter.find("[name='feed.link.host']").sendKeys("127.0.0.1");
      fitter.find("[name='feed.mmPerCount']").sendKeys("0.1");
      fitter.findsNothingGrave();
      fitter.press("Save and try");
      fitter.counts("[name='feed.link.port'][aria-invalid]", 1);
      fitter.find("[name='feed.link.port']").sendKeys("1");
      fitter.press("Save and try");
      fitter.sees("#title", "A · three-roll bender");
      FeedSettings feed = Objects.requireNonNull(inStep(served).feed());
      FeedSettings.CountLink link = Objects.requireNonNull(feed.link());
      assertEquals(new TcpSettings("127.0.0.1", 1), link.link());
      assertEquals(0.1, Objects.requireNonNull(feed.wheel()).scale().mmPerCount());
      fitter.sees("main", "No length along the feed");
      fitter.go(PAGE);
      fitter.counts("[name='feed.link.port']", 1);
      new Select(fitter.find("[name='capture.mode']")).selectByValue("settled");
      fitter.press("Save and try");
      fitter.sees("#title", "A · three-roll bender");
      assertNull(inStep(served).feed());
      fitter.leavesNothingOnTheConsole();
    }
  }

  @Test
  void aStationIsRemovedAndItsJobStays() throws Exception {
    try (Served served = new Served(directory)) {
      long job = served.job().id();
      Visitor fitter = atSettings(served);
      fitter.press("Remove this station…");
      fitter.sees("dialog", "Its jobs, readings and calibrations stay");
      fitter.findsNothingGrave();
      fitter.press("Cancel");
      assertEquals("A", inStep(served).name());
      fitter.press("Remove this station…");
      fitter.press("Remove");
      Await.until(() -> served.stations.statuses().isEmpty());
      Await.until(() -> !fitter.text("#title").contains("Settings"));
      assertEquals(List.of(), StationFile.read(served.stationFile));
      assertFalse(Files.readString(served.stationFile).contains("name: A"));
      assertEquals(200, served.get("/api/jobs/" + job).statusCode());
      fitter.leavesNothingOnTheConsole();
    }
  }
}
