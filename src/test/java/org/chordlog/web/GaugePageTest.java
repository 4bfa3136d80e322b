package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.measure.Face;
import org.chordlog.measure.Master;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever looks after the gauge, task by task. Span 200 mm, foot radius 5 mm. */
final class GaugePageTest extends BrowserTest {
  /** a²/(ρ + √(ρ² − a²)) with a = 100 and ρ = R + 5: depth on an outer face of that radius. */
  private static final double DEPTH_1800 = 2.772;

  private static final double DEPTH_1000 = 4.988;
  private static final String HEAD = "name,face,radius_mm,expanded_uncertainty_mm,check_limit_mm\n";

  @TempDir Path directory;
  private Served served;
  private Visitor keeper;

  @BeforeEach
  void open() throws Exception {
    served = new Served(directory.resolve("data"));
    served.job();
    served.zeroAndFree();
    keeper = new Visitor(served, browser, "Greta");
  }

  @AfterEach
  void close() {
    served.close();
  }

  @Test
  void calibratesOnTwoMastersStepByStep() throws Exception {
    served.store.gauges().add(new Master(0, "wide", Face.OUTER, 1800, 0.2), "me");
    served.store.gauges().add(new Master(0, "tight", Face.OUTER, 1000, 0.2), "me");
    keeper.go("/gauge.html");
    keeper.sees("#gauge", "Gauge not calibrated");
    keeper.press("Calibrate");
    keeper.sees("dialog", "Nothing read yet");
    read("wide: outer face, 1800 mm", DEPTH_1800);
    read("tight: outer face, 1000 mm", DEPTH_1000);
    keeper.sees("dialog", "Effective span 200.");
    keeper.press("Save calibration");
    keeper.sees("#gauge", "Due in");
    long bridge = served.store.gauges().mountedOn("A").orElseThrow().id();
    var kept = served.store.gauges().latestCalibration("A", bridge).orElseThrow();
    assertEquals(200, kept.spanMm(), 0.1);
    assertEquals("Greta", kept.takenBy());
    keeper.leavesNothingOnTheConsole();
  }

  private void read(String master, double depthMm) throws Exception {
    served.indicator.show(depthMm);
    keeper.field("The bridge stands on").sendKeys(master);
    String name = master.substring(0, master.indexOf(':'));
    keeper.pressUntil("Read this master", () -> keeper.text("dialog tbody").contains(name));
    served.indicator.show(TerminalIndicator.FREE_MM);
  }

  @Test
  void seesThatACheckFailedAndSinceWhenReadingsAreInDoubt() throws Exception {
    served.store.gauges().add(new Master(0, "wide", Face.OUTER, 1800, 0.2), "me");
    keeper.go("/gauge.html");
    keeper.press("Check on a master");
    keeper.fill("May differ by, at most ±", "1");
    served.indicator.show(2.9);
    keeper.pressUntil("Check now", () -> keeper.count("dialog") == 0);
    keeper.sees("#gauge", "Failed");
    keeper.sees("#gauge .care-note", "in doubt");
    long bridge = served.store.gauges().mountedOn("A").orElseThrow().id();
    assertFalse(served.store.gauges().checks("A", bridge, 1).get(0).passed());
  }

  @Test
  void isToldAtTheFieldWhatIsWrongWithABridge() throws Exception {
    keeper.go("/gauge.html");
    keeper.press("Add a bridge");
    keeper.fill("Name", "short");
    keeper.fill("Span", "-50");
    keeper.fill("Standard uncertainty of the span", "0.01");
    keeper.press("Add");
    keeper.sees("dialog .fault", "Is not above zero");
    assertEquals("true", keeper.field("Span").getDomAttribute("aria-invalid"));
    keeper.fill("Span", "50");
    keeper.press("Add");
    keeper.sees("#gauge", "short");
    keeper.leavesNothingOnTheConsole();
  }

  @Test
  void seesTheBudgetAndWhichBridgeSuits() throws Exception {
    served.indicator.show(2.733);
    Await.until(() -> served.stations.status("A").counts().readings() == 1);
    keeper.go("/gauge.html");
    keeper.sees("#gauge", "Where the uncertainty comes from");
    keeper.sees("[aria-label='Uncertainty budget']", "rectangular");
    keeper.sees("[aria-label='Bridges for this job']", "Recommended");
  }

  @Test
  void masterDataComeFromAFileThatIsLookedAtFirst() throws Exception {
    Path bad = Files.writeString(directory.resolve("bad.csv"), HEAD + "ring,outer,wide,0.2,\n");
    Path good =
        Files.writeString(directory.resolve("good.csv"), HEAD + "ring,outer,1800,0.2,0.5\n");
    keeper.go("/gauge.html");
    keeper.press("Masters from a file");
    keeper.field("File (CSV)").sendKeys(bad.toString());
    keeper.press("Look at the file");
    keeper.sees("dialog", "line 2, column radius_mm");
    keeper.field("File (CSV)").sendKeys(good.toString());
    keeper.press("Look at the file");
    keeper.sees("dialog", "outer face, radius 1800 mm, expanded uncertainty (k = 2) 0.2 mm");
    keeper.press("Add what is new (1)");
    keeper.sees("#gauge", "± 0.5");
    assertEquals(1, served.store.gauges().masters().size());
  }
}
