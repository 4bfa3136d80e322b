package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.station.StationFile;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several stations on one screen of a wall: live, in the order asked for, to the edges. */
final class WallPageTest extends BrowserTest {
  private static final List<String> OTHERS = List.of("B", "C", "D", "E", "F");

  /** What leaves the screen, is cut off, or leaves an edge of the screen empty. */
  private static final String FAULTS =
      """
      const tiles = [...document.querySelectorAll('.tile')].map((each) => each.getBoundingClientRect());
      const foot = document.querySelector('.wall-foot').getBoundingClientRect();
      const cut = [...document.querySelectorAll('.dial, .dial p:not(.now), .tile-head p')]
        .filter((each) => each.clientWidth > 0
          && (each.scrollWidth > each.clientWidth + 1
            || (each.matches('.dial, .why') && each.scrollHeight > each.clientHeight + 2)))
        .map((each) => 'cut off: ' + each.className + ' ' + each.textContent);
      const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
      const edges = [
        Math.min(...tiles.map(({ left }) => left)),
        innerWidth - Math.max(...tiles.map(({ right }) => right)),
        Math.min(...tiles.map(({ top }) => top)),
        foot.top - Math.max(...tiles.map(({ bottom }) => bottom)),
        innerHeight - foot.bottom,
      ].filter((gap) => gap < -0.01 || gap > 0.6 * rem);
      return [...cut, ...edges.map((gap) => 'edge: ' + gap + ' px')].join('; ');
      """;

  /** A telephone has room below: advice of three lines stands there in full. */
  private static final String ADVICE_IN_FULL =
      """
      const why = document.querySelector('.why');
      why.lastElementChild.textContent = 'Open the radius by 3.4 mm. '.repeat(6);
      return why.scrollHeight > 0 && why.scrollHeight <= why.clientHeight + 1;
      """;

  /** The lowest capital of what matches and is shown, px; these are 0.711 of the letters' size. */
  private static final String LOWEST_CAPITAL =
      """
      return Math.min(...[...document.querySelectorAll(arguments[0])]
        .filter((each) => each.getClientRects().length && each.textContent.trim())
        .map((each) => 0.711 * parseFloat(getComputedStyle(each).fontSize)));
      """;

  /** Verdict, radius, what belongs to it, and what to do next. */
  private static final String FIRST = ".word, .figure, .value, .next";

  private static final String NAMES =
      ".tile-head *, .caption, .note-line, .spread span, .of-piece span, .why span, .recent text";

  @TempDir static Path directory;
  private static Served served;
  private static final Map<String, TerminalIndicator> indicators = new HashMap<>();
  private Visitor wall;

  @BeforeAll
  static void serve() throws Exception {
    served = new Served(directory.resolve("data"));
    indicators.put("A", served.indicator);
    served.zeroAndFree();
    for (String name : OTHERS) {
      add(name);
    }
  }

  @AfterAll
  static void close() {
    served.close();
    OTHERS.forEach(name -> indicator(name).close());
  }

  /** Each test with jobs of its own, at which nothing is measured yet. */
  @BeforeEach
  void open() {
    indicators.keySet().forEach(WallPageTest::chooseAJob);
    SharedBrowser.forget(served.web.port());
    wall = new Visitor(served, browser, "Anna");
  }

  private static void add(String name) throws Exception {
    TerminalIndicator indicator = new TerminalIndicator(directory.resolve("indicator " + name));
    indicators.put(name, indicator);
    String file =
        """
        stations:
          - name: %s
            machine: roller %s
            link: {kind: serial, port: %s}
            profile: signed-mm-lines
            direction: counts_up
            indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.7}
            bridge: {name: long, spanMm: 200, spanUncertaintyMm: 0.02, footRadiusMm: 5}
        """
            .formatted(name, name, indicator.port());
    StationFile.parse(file, name).forEach(served.stations::add);
    served.zeroAndFree(name, indicator);
  }

  private static void chooseAJob(String name) {
    Job job = served.store.jobs().add(job(name), "tester");
    served.store.jobs().activate(name, job.id());
    served.stations.at(name).refresh();
  }

  private static Job job(String station) {
    return Job.opened(
        new Job.Order("Canopy hoops " + station, "hoop", "lot 1"),
        new Job.Workplace("roller " + station, station),
        new Job.Inspection(
            new Section.RoundTube(60.3, 3.2),
            Face.OUTER,
            new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0),
            new Plan(List.of("middle"), new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 5))),
        Some.T0);
  }

  @Test
  void sixStationsFillTheScreenAndEachShowsItsOwnPieces() throws Exception {
    wall.looksAt(1920, 1080);
    wall.go("/wall.html");
    wall.counts(".tile .dial", 6);
    touch("B", 2.733);
    touch("E", 2.9);
    wall.sees(tile("B", ".word"), "Good");
    wall.sees(tile("E", ".word"), "Too tight");
    wall.sees(tile("E", ".next"), "Ask before you go on.");
    for (String untouched : List.of("A", "C", "D", "F")) {
      wall.sees(tile(untouched, ".word"), "Ready");
    }
    assertEquals("", wall.page.executeScript(FAULTS));
    readableFrom(3, FIRST, 1);
    readableFrom(3, NAMES, 0.45);
    wall.looksAt(1280, 800);
    Await.until(
        () -> "".equals(wall.page.executeScript(FAULTS)), () -> wall.page.executeScript(FAULTS));
    wall.findsNothingGrave();
    wall.looksAt(390, 844);
    assertEquals(true, wall.page.executeScript(ADVICE_IN_FULL));
    wall.leavesNothingOnTheConsole();
  }

  @Test
  void someStationsStandInTheOrderAskedForAndALostOneIsSeen() throws Exception {
    wall.looksAt(1920, 1080);
    wall.go("/wall.html?stations=C,A");
    Await.until(() -> "C\nA".equals(wall.text(".tile h2")), () -> wall.text(".tile h2"));
    touch("C", 2.733);
    wall.sees(tile("C", ".word"), "Good");
    assertEquals("", wall.page.executeScript(FAULTS));
    indicator("C").unplug();
    wall.counts("[data-station='C'][data-dead='true']", 1);
    assertEquals(1, wall.count("[data-station='A'][data-dead='false']"));
    wall.leavesNothingOnTheConsole();
    indicator("C").plugIn();
    Await.until(() -> served.stations.at("C").inFreeAir());
  }

  /** Other browsers allow it without a word; the one without windows has to be told. */
  @Test
  void aScreenOnAWallStaysOn() throws Exception {
    Blink.needed(browser);
    Blink.run(
        browser, "Browser.grantPermissions", Map.of("permissions", List.of("wakeLockScreen")));
    wall.go("/wall.html");
    wall.counts("html[data-awake='true']", 1);
  }

  @Test
  void allOfOneStationIsReadFromThreeMetres() throws Exception {
    wall.looksAt(1920, 1080);
    wall.go("/wall.html?stations=B");
    wall.counts(".tile .dial", 1);
    touch("B", 2.733);
    wall.sees(tile("B", ".word"), "Good");
    assertEquals("", wall.page.executeScript(FAULTS));
    readableFrom(3, FIRST, 3);
    readableFrom(3, NAMES, 0.93);
    wall.looksAt(3840, 2160);
    Await.until(() -> wall.number(LOWEST_CAPITAL, ".recent text") > 50);
    assertEquals("", wall.page.executeScript(FAULTS));
    readableFrom(3, FIRST, 3);
    readableFrom(3, NAMES, 0.93);
  }

  /**
   * Capitals of a 200th of the distance on a screen of 43 inches, 952 mm wide whatever its px, or
   * that share of it.
   */
  private void readableFrom(double metres, String what, double share) {
    double wanted = share * metres * 1000 / 200 * wall.number("return innerWidth") / 952;
    double lowest = wall.number(LOWEST_CAPITAL, what);
    assertTrue(lowest >= wanted, what + ": " + lowest + " px, wanted " + wanted);
  }

  @Test
  void aStationThatIsNotThereIsSaidWithThoseThatAre() throws Exception {
    wall.go("/wall.html?stations=Z");
    wall.sees("#wall", "There is no station Z. The stations are: ");
  }

  @Test
  void aScreenThatWasNeverTouchedSaysThatItsSoundWaits() throws Exception {
    wall.go("/wall.html?stations=A");
    wall.sees("#sound", "Switch sound on");
    assertEquals(1, wall.count("#sound:not([hidden])"));
    wall.press("Switch sound on");
    wall.counts("#sound[hidden]", 1);
    wall.leavesNothingOnTheConsole();
  }

  @Test
  void aPedalWorksOnAScreenOfOneStation() throws Exception {
    wall.go("/wall.html?stations=A");
    wall.counts(".tile .dial", 1);
    touch("A", 2.733);
    wall.sees(tile("A", ".word"), "Good");
    wall.find("body").sendKeys("*");
    wall.sees("dialog[open]", "Piece 1, pass 1: what happened?");
    wall.press("Only measured again");
    wall.sees(".note", "Piece 1, pass 1, middle: measure it again.");
    wall.go("/wall.html?stations=A,B");
    wall.counts(".tile .dial", 2);
    wall.find("body").sendKeys("*");
    wall.sees(".note", "A pedal works where the wall shows one station.");
  }

  private static TerminalIndicator indicator(String station) {
    return Objects.requireNonNull(indicators.get(station));
  }

  private static String tile(String station, String part) {
    return "[data-station='" + station + "'] " + part;
  }

  /** Puts the bridge of that station on a piece, waits for the reading, and lifts it again. */
  private void touch(String station, double depthMm) throws Exception {
    long before = served.stations.status(station).counts().readings();
    indicator(station).show(depthMm);
    Await.until(() -> served.stations.status(station).counts().readings() > before);
    indicator(station).show(TerminalIndicator.FREE_MM);
    wall.sees(tile(station, ".now"), "in free air");
  }
}
