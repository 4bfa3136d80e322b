package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.Await;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationSettings;
import org.chordlog.station.StationStatus.LinkState;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.remote.RemoteWebDriver;
import org.openqa.selenium.support.ui.Select;

/** One fitter at the page; counts presses and choices, not what is typed. */
final class Fitter extends Visitor {
  int clicks;

  Fitter(Served served, RemoteWebDriver browser) {
    super(served, browser, "Carl");
  }

  @Override
  void press(String words) throws Exception {
    super.press(words);
    clicks++;
  }

  void choose(String label, String words) throws Exception {
    new Select(field(label)).selectByVisibleText(words);
    clicks++;
  }

  /** From a port to the station of that name, which reads. */
  StationSettings adds(HandIndicator indicator, String shown, Served served, String name)
      throws Exception {
    listenAt(indicator);
    picks(indicator, shown);
    pushesIn(indicator);
    names(name);
    return added(served, name);
  }

  void listenAt(HandIndicator indicator) throws Exception {
    find("[name='port']").sendKeys(indicator.port());
    press("Listen here");
  }

  /** Picks the first line that reads what the indicator shows while it is held. */
  void picks(HandIndicator indicator, String shown) throws Exception {
    find(".reads-now");
    counts("#heard progress", 0);
    indicator.hold();
    WebElement unused = line(shown);
    findsNothingGrave();
    line(shown).findElement(By.tagName("button")).click();
    clicks++;
  }

  private WebElement line(String shown) throws Exception {
    return first("#heard tbody tr", shown + " ");
  }

  void pushesIn(HandIndicator indicator) throws Exception {
    indicator.letOut();
    press("Watch for 5 seconds");
    indicator.push();
    sees("#pushed", "ushing in counts");
  }

  void names(String name) throws Exception {
    Await.until(() -> count("[name='machine']") == 1);
    fill("Name of the station", name);
    fill("Machine", "roller 2");
    fill("Step", "0.001");
    fill("Permissible error ±", "0.003");
    fill("Travel", "12.5");
    fill("Name", "bridge 200");
    fill("Span", "200");
    fill("Standard uncertainty of the span", "0.02");
    findsNothingGrave();
    press("Add the station");
    sees("#title", name);
    sees(".now", "Now: ");
  }

  /** The station of that name, which reads by now, as it is in the station file. */
  StationSettings added(Served served, String name) throws Exception {
    leavesNothingOnTheConsole();
    Await.until(() -> served.stations.status(name).link() == LinkState.OPEN);
    Await.until(() -> served.stations.status(name).counts().samples() > 10);
    System.out.println(name + ": " + clicks + " clicks");
    assertTrue(clicks <= 8, name + ": " + clicks + " clicks");
    return StationFile.read(served.stationFile).stream()
        .filter(station -> station.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** What is selected in the field with that label. */
  String chosen(String label) throws Exception {
    return new Select(field(label)).getFirstSelectedOption().getText();
  }
}
