package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.simulator.ScenarioFile;
import org.chordlog.simulator.Simulator;
import org.chordlog.station.StationStatus.LinkState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;

/** Whoever sets a station up: an indicator of unknown form on a pseudo-terminal. */
final class AddStationPageTest extends BrowserTest {
  @TempDir Path directory;

  @Test
  void addsAStationFromWhatItsPortSends() throws Exception {
    Simulator simulator =
        Simulator.onTerminal(ScenarioFile.read(ScenarioFile.DEMO), 1, 1, null, contact -> {});
    Thread playing = new Thread(() -> play(simulator), "indicator");
    playing.start();
    try (Served served = new Served(directory.resolve("data"))) {
      Visitor fitter = new Visitor(served, browser, "Carl");
      add(served, fitter, simulator.address());
      fitter.leavesNothingOnTheConsole();
    } finally {
      simulator.stop();
      playing.join();
    }
  }

  private static void play(Simulator simulator) {
    try {
      simulator.run();
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void add(Served served, Visitor fitter, String port) throws Exception {
    fitter.go("/add-station.html");
    Await.until(() -> fitter.count("[name='port']") == 1);
    fitter.page.findElement(By.name("port")).sendKeys(port);
    fitter.press("Listen here");
    fitter.sees(".stream", "‹CR›‹LF›");
    fitter.findsNothingGrave();
    fitter.press("Use this");
    fitter.fill("Name of the station", "bend-2");
    fitter.fill("Machine", "roller 2");
    fitter.fill("Step", "0.001");
    fitter.fill("Permissible error ±", "0.003");
    fitter.fill("Travel", "12.5");
    fitter.fill("Name", "bridge 200");
    fitter.fill("Span", "200");
    fitter.fill("Standard uncertainty of the span", "0.02");
    fitter.press("Add the station");
    fitter.sees("#title", "bend-2");
    fitter.sees(".now", "Now: ");
    assertEquals(LinkState.OPEN, served.stations.status("bend-2").link());
  }
}
