package org.chordlog.web;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.store.Some;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/**
 * Tests of an operator at a station with a zero, each with a job of its own at a service of the
 * class. A test after which the station is not as it was gives the service up.
 */
abstract class OperatorTest extends BrowserTest {
  static final String STATION = "/station.html?station=A";
  @TempDir static Path directory;
  static @Nullable Served last;
  Served served;
  Visitor operator;
  Job job;
  private long before;

  @BeforeEach
  void open() throws Exception {
    @Nullable Served earlier = last;
    served = earlier == null ? new Served(Files.createTempDirectory(directory, "data")) : earlier;
    last = served;
    job = served.selected(ordered());
    if (earlier == null) {
      served.zeroAndFree();
    }
    before = served.stations.status("A").counts().readings();
    SharedBrowser.forget(served.web.port());
    operator = new Visitor(served, browser, "Anna");
  }

  /** The job of each test. */
  Job ordered() {
    return Some.job("hoops", "three-roll bender");
  }

  /** The next test begins with the bridge in free air, and without this job. */
  @AfterEach
  void free() throws Exception {
    if (last != null) {
      var unused = served.post("/api/jobs/" + job.id() + "/close", "{}");
      served.indicator.show(TerminalIndicator.FREE_MM);
      Await.until(served::free);
    }
  }

  @AfterAll
  static void close() {
    giveUp();
  }

  static void giveUp() {
    if (last != null) {
      last.close();
      last = null;
    }
  }

  /** Puts the bridge on the piece, waits for the reading, and lifts the bridge again. */
  void touch(double depthMm, int taken) throws Exception {
    served.indicator.show(depthMm);
    Await.until(() -> taken() == taken);
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees(".now", "in free air");
  }

  /** Readings so far. */
  long taken() {
    return served.stations.status("A").counts().readings() - before;
  }

  String focused() {
    return String.valueOf(
        operator.page.executeScript("return document.activeElement.dataset.act ?? ''"));
  }
}
