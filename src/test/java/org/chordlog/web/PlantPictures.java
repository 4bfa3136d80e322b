package org.chordlog.web;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.Await;
import org.chordlog.measure.Recorded;
import org.chordlog.notify.AlertWatch;
import org.chordlog.notify.WatchedPlant;
import org.chordlog.store.Plant;
import org.chordlog.web.http.Times;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * Pictures of a plant's pages, to be looked at: 3 sites with 12 invented machines in a real
 * database, on three screens, light and dark; what axe finds is printed. Argument: a folder for the
 * pictures.
 */
public final class PlantPictures {
  private record Screen(String name, int width, int height) {}

  private static final List<Screen> SCREENS =
      List.of(
          new Screen("phone", 390, 844),
          new Screen("tablet", 768, 1024),
          new Screen("desk", 1280, 800));

  private final Path folder;
  private final RemoteWebDriver browser;
  private final Visitor visitor;

  private PlantPictures(Path folder, PlantRig rig) {
    this.folder = folder;
    browser = SharedBrowser.asNew();
    visitor = new Visitor(URI.create("http://127.0.0.1:" + rig.web.port()), browser, "Q. Manager");
  }

  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    Path data = Files.createTempDirectory("plant-pictures");
    try (PlantRig rig = rig(data);
        AlertWatch watch = watch(rig)) {
      rig.web.watchedBy(watch::counts);
      rig.web.alertsFrom(() -> new AlertsState(watch.since(), false, List.of()));
      watch.start();
      Await.until(() -> rig.plant.own().alerts().open().size() == 2);
      ask(rig);
      new PlantPictures(folder, rig).take(rig);
    }
    System.exit(0);
  }

  private static PlantRig rig(Path data) throws Exception {
    PlantRig rig =
        new PlantRig()
            .with("Main works", "hall 1", data.resolve("a"))
            .with("Main works", "hall 2", data.resolve("b"))
            .with("North", "gate", data.resolve("c"))
            .with("North", "yard", data.resolve("d"))
            .with("South", "arches", data.resolve("e"))
            .with("South", "rings", data.resolve("f"))
            .without("South", "cellar")
            .complete();
    for (String each : List.of("hall 1", "yard")) {
      rig.cutOff(each);
    }
    return rig.silent("gate", 7_300).clockAhead("yard", -185).waiting("gate", 12_345);
  }

  private static AlertWatch watch(PlantRig rig) {
    WatchedPlant watched = new WatchedPlant(rig.plant, WatchedPlant.USUAL_SILENT, () -> true);
    // so that a clock counts as wrong at once
    return new AlertWatch(watched, new Ahead()::micros, AlertWatch.Times.AT_ONCE);
  }

  /** Goes a minute on with each round. */
  private static final class Ahead {
    private long minutes;

    long micros() {
      minutes = Math.min(minutes + 1, 5);
      return Times.micros(Instant.now()) + minutes * 60_000_000L;
    }
  }

  private static void ask(PlantRig rig) {
    Recorded by = new Recorded(Times.micros(Instant.now()), "Q. Manager");
    long alert = rig.store("hall 1").alerts().open().get(0).id();
    String body = "{\"alertId\":" + alert + ",\"word\":\"I drive over\"}";
    Plant.RequestKind kind = Plant.RequestKind.ACKNOWLEDGE_ALERT;
    Plant.Request refused = rig.plant.ask(rig.id("hall 1"), kind, body, by);
    rig.answer(refused.id(), "Somebody has acknowledged this alert already.");
    Plant.Request unused = rig.plant.ask(rig.id("hall 1"), kind, body, by);
  }

  private void take(PlantRig rig) throws Exception {
    long job = rig.store("hall 1").jobs().list(Long.MAX_VALUE, 9).get(3).id();
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("front", "/");
    pages.put("alerts-of-plant", "/alerts.html");
    pages.put("search", "/jobs.html?text=hoop");
    pages.put("workshop", "/edges/hall%201/");
    pages.put("workshop-silent", "/edges/gate/");
    pages.put("machine", "/edges/hall%201/machine.html?machine=roller%202");
    pages.put("job", "/edges/hall%201/job.html?job=" + job);
    pages.put("alerts-of-workshop", "/edges/hall%201/alerts.html");
    for (Screen screen : SCREENS) {
      visitor.looksAt(screen.width(), screen.height());
      for (Map.Entry<String, String> page : pages.entrySet()) {
        picture(screen, page.getKey(), page.getValue());
      }
    }
  }

  private void picture(Screen screen, String name, String path) throws Exception {
    visitor.go(path);
    Await.until(() -> !visitor.text("main").isBlank() && visitor.count("[aria-busy]") == 0);
    BelowPathTest.quiet(visitor);
    Object width = browser.executeScript("return document.documentElement.scrollWidth");
    if (Integer.parseInt(String.valueOf(width)) > screen.width()) {
      System.out.println(screen.name() + " " + name + " is " + width + " px wide");
    }
    for (String theme : List.of("light", "dark")) {
      browser.executeScript("document.documentElement.dataset.theme = arguments[0]", theme);
      List<?> found =
          theme.equals("light") ? Axe.findings(browser) : Axe.findingsOfColours(browser);
      found.forEach(each -> System.out.println(screen.name() + " " + name + ": " + each));
      Files.write(
          folder.resolve(name + "-" + screen.name() + "-" + theme + ".png"),
          browser.getScreenshotAs(OutputType.BYTES));
    }
  }
}
