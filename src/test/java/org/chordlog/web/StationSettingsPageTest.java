package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.capture.Direction;
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
    Await.until(() -> fitter.count(STEP) == 1);
    return fitter;
  }

  /** The file has what the service goes by. */
  private static StationSettings inStep(Served served) {
    List<StationSettings> file = StationFile.read(served.stationFile);
    assertEquals(served.stations.settings(), file);
    return file.get(0);
  }

  @Test
  void aSettingIsChangedAndTheStationReadsOnByIt() throws Exception {
    try (Served served = new Served(directory)) {
      long job = served.job().id();
      Visitor fitter = atSettings(served);
      fitter.findsNothingGrave();
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
      assertEquals(job, served.stations.status("A").jobId());
      fitter.leavesNothingOnTheConsole();
    }
  }

  @Test
  void aDirectionThatNobodyHasSaidIsChosen() throws Exception {
    try (Served served = new Served(directory)) {
      ObjectNode body = (ObjectNode) served.json("/api/stations/A/settings");
      ((ObjectNode) body.get("station")).putNull("direction");
      assertEquals(200, served.put("/api/stations/A/settings", body.toString()).statusCode());
      assertNull(inStep(served).direction());
      Visitor fitter = atSettings(served);
      fitter.sees(".field:has([name='direction'])", "not said yet");
      fitter.findsNothingGrave();
      new Select(fitter.field("Pushing the plunger in")).selectByVisibleText("counts down");
      fitter.press("Save and try");
      fitter.sees("#title", "A · three-roll bender");
      assertEquals(Direction.COUNTS_DOWN, inStep(served).direction());
      fitter.leavesNothingOnTheConsole();
    }
  }

  @Test
  void aWrongValueIsRefusedAtItsFieldAndNothingChanges() throws Exception {
    try (Served served = new Served(directory)) {
      String before = Files.readString(served.stationFile);
      Visitor fitter = atSettings(served);
      fitter.fill("Step", "-1");
      fitter.press("Save and try");
      Await.until(() -> fitter.count(STEP + "[aria-invalid]") == 1);
      assertEquals(1, fitter.count("[aria-invalid]"));
      assertTrue(fitter.find(STEP).equals(browser.switchTo().activeElement()));
      fitter.sees(".field:has(" + STEP + ") .fault", "Allowed: ");
      fitter.findsNothingGrave();
      fitter.fill("Step", "0.001");
      fitter.fill("At rest for", "soon");
      fitter.press("Save and try");
      Await.until(() -> fitter.count("[name='capture.restSeconds'][aria-invalid]") == 1);
      assertEquals(before, Files.readString(served.stationFile));
      assertEquals(LinkState.OPEN, served.stations.status("A").link());
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
