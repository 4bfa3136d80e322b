package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Store;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** People at a plant: what they look for, on a large screen and on a phone. */
final class PlantPagesTest extends BrowserTest {
  @TempDir static Path directory;
  private static PlantRig rig;
  private static Visitor visitor;

  @BeforeAll
  static void serve() throws Exception {
    rig =
        new PlantRig()
            .with("Main works", "hall 1", directory.resolve("hall"))
            .with("North", "gate", directory.resolve("gate"))
            .without("North", "cellar")
            .complete()
            .cutOff("hall 1")
            .silent("gate", 7_300);
    visitor = new Visitor(URI.create("http://127.0.0.1:" + rig.web.port()), browser, "Anna");
  }

  @AfterAll
  static void stop() {
    rig.close();
  }

  @Test
  void whatNeedsSomebodyIsSeenFirstAndLeadsToItsMachine() throws Exception {
    visitor.looksAt(1280, 800);
    visitor.go("/");
    visitor.sees("#first", "Nothing was heard from gate for 2 hours");
    visitor.sees("#first", "cellar was added to the plant");
    visitor.sees("#first", "roller 2");
    visitor.sees("#sites", "All records of hall 1 are here, up to reading");
    visitor.findsNothingGrave();
    visitor.click(".workshop[data-edge='hall 1'] [data-machine='roller 2'] a");
    visitor.sees("h1", "roller 2");
    visitor.sees(".whose", "Plant› Main works › hall 1");
    Await.until(() -> visitor.count("section[aria-label='Drift'] .chart-box svg") == 1);
    visitor.findsNothingGrave();
    visitor.leavesNothingOnTheConsole();
  }

  @Test
  void aJobIsFoundWithoutKnowingWhereItWasMeasured() throws Exception {
    Job job = measured(rig.store("gate"));
    visitor.looksAt(1280, 800);
    visitor.go("/");
    visitor.fill("Find a job in order, part, lot", job.name());
    visitor.press("Find");
    visitor.sees("h1", "Jobs of the plant");
    visitor.sees("#jobs", "North · gate");
    visitor.findsNothingGrave();
    visitor.click("#jobs a[href*='edges/gate/']");
    visitor.sees("h1", job.name());
    Await.until(() -> visitor.count("section[aria-label='Control charts'] .picture svg") == 1);
    for (String change :
        List.of("Change", "Duplicate", "Close job", "Record an event", "Exclude")) {
      assertEquals(0, shown(change), change);
    }
    visitor.leavesNothingOnTheConsole();
  }

  private static Job measured(Store store) {
    return store.jobs().search(JobQuery.of(JobQuery.Order.OLDEST, 1)).get(0);
  }

  /** Buttons and links with these words that can be seen. */
  private static long shown(String words) {
    Object count =
        visitor.page.executeScript(
            "return [...document.querySelectorAll('button, a')].filter(e =>"
                + " e.textContent === arguments[0] && e.getClientRects().length > 0).length",
            words);
    return (Long) Objects.requireNonNull(count);
  }

  @Test
  void anAlertIsAcknowledgedFromThePlant() throws Exception {
    visitor.looksAt(1280, 800);
    visitor.go("/edges/hall%201/alerts.html");
    visitor.sees("#alerts", "Waits for somebody");
    assertEquals(0, shown("Take out of service"));
    visitor.press("Acknowledge");
    visitor.fill("A word on it", "I drive over");
    visitor.click("dialog button.main");
    visitor.sees(".request", "On its way to hall 1");
    visitor.findsNothingGrave();
    rig.answer(rig.requests("hall 1").get(0).id(), "It is over by now.");
    visitor.sees(".request", "Refused: It is over by now.");
    visitor.go("/edges/hall%201/");
    visitor.sees("#requests", "I drive over");
    visitor.findsNothingGrave();
    visitor.leavesNothingOnTheConsole();
  }

  @Test
  void workIsWrittenIntoALogBookFromThePlant() throws Exception {
    visitor.looksAt(1280, 800);
    visitor.go("/edges/hall%201/machine.html?machine=roller%201");
    visitor.press("Write an entry");
    visitor.fill("Remark", "greased");
    visitor.press("Write it down");
    visitor.sees("section[aria-label='Log book'] .request", "On its way to hall 1");
    visitor.leavesNothingOnTheConsole();
  }

  /** No page fetches anything that is refused, leads out of the plant, or is wider than a phone. */
  @Test
  void everyPageFitsAPhoneAndFetchesWhatIsThere() throws Exception {
    long job = measured(rig.store("hall 1")).id();
    visitor.looksAt(390, 844);
    List<String> wrong = new ArrayList<>();
    for (String page :
        List.of(
            "/",
            "/jobs.html",
            "/edges/hall%201/",
            "/edges/hall%201/jobs.html",
            "/edges/hall%201/machines.html",
            "/edges/hall%201/machine.html?machine=roller%202",
            "/edges/hall%201/job.html?job=" + job,
            "/edges/hall%201/job-changes.html?job=" + job,
            "/edges/hall%201/studies.html",
            "/edges/hall%201/alerts.html",
            "/edges/hall%201/help/service")) {
      visitor.go(page);
      Await.until(() -> !visitor.text("main").isBlank(), () -> page);
      BelowPathTest.quiet(visitor);
      wrong.addAll(said(STRAYED));
      said("return [String(document.documentElement.scrollWidth)]")
          .forEach(
              width -> {
                if (Integer.parseInt(width) > 390) {
                  wrong.add(page + " is " + width + " px wide");
                }
              });
    }
    assertEquals(List.of(), wrong);
    assertTrue(visitor.count(".whose") == 1, "the line that says whose it is");
    visitor.leavesNothingOnTheConsole();
  }

  private static final String STRAYED =
      "return performance.getEntriesByType('resource')"
          + ".filter(e => e.responseStatus >= 400).map(e => e.responseStatus + ' ' + e.name)";

  @SuppressWarnings("unchecked")
  private static List<String> said(String script) {
    return (List<String>) Objects.requireNonNull(visitor.page.executeScript(script));
  }
}
