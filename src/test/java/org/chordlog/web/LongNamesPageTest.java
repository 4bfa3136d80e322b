package org.chordlog.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names of people's own, sixty letters without a blank, on a phone. */
final class LongNamesPageTest extends BrowserTest {
  private static final String ORDER =
      "Donaudampfschifffahrtsgesellschaftskapitänsmützenbügel<b>\"1\"";
  private static final String MACHINE =
      "Dreiwalzenbiegemaschinemitüberlangem<i>Namenohneleerzeichen'";
  @TempDir Path directory;

  @Test
  void noPageIsWiderThanAPhoneForALongName() throws Exception {
    try (Served served = new Served(directory.resolve("data"))) {
      Job job = served.selected(Some.job(ORDER, MACHINE));
      Visitor visitor = new Visitor(served, browser, "Anna");
      visitor.looksAt(390, 844);
      for (String path : pages(job)) {
        visitor.go(path);
        visitor.find("h1, h2");
        Await.until(() -> visitor.number(WIDER) == 0, () -> path + " is wider than the screen");
      }
      visitor.sees("h1", MACHINE);
      visitor.leavesNothingOnTheConsole();
    }
  }

  private static final String WIDER =
      "const page = document.documentElement;"
          + "return page.textContent.match(/kapitänsmützenbügel|Dreiwalzenbiegemaschine/)"
          + "  ? page.scrollWidth - page.clientWidth : 1";

  private static List<String> pages(Job job) {
    return List.of(
        "/",
        "/station.html?station=A",
        "/wall.html",
        "/gauge.html?station=A",
        "/job.html?job=" + job.id(),
        "/job-form.html?job=" + job.id(),
        "/job-changes.html?job=" + job.id(),
        "/machines.html",
        "/machine.html?machine=" + URLEncoder.encode(MACHINE, StandardCharsets.UTF_8));
  }
}
