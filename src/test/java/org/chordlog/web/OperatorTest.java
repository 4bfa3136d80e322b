package org.chordlog.web;

import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** Tests of an operator at a station with a job and a zero; each has a service of its own. */
abstract class OperatorTest extends BrowserTest {
  static final String STATION = "/station.html?station=A";
  @TempDir Path directory;
  Served served;
  Visitor operator;
  Job job;

  @BeforeEach
  void open() throws Exception {
    served = new Served(directory.resolve("data"));
    job = served.job();
    served.zeroAndFree();
    operator = new Visitor(served, browser, "Anna");
  }

  @AfterEach
  void close() {
    served.close();
  }

  /** Puts the bridge on the piece, waits for the reading, and lifts the bridge again. */
  void touch(double depthMm, int taken) throws Exception {
    served.indicator.show(depthMm);
    Await.until(() -> served.stations.status("A").counts().readings() == taken);
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees(".now", "in free air");
  }

  String focused() {
    return String.valueOf(
        operator.page.executeScript("return document.activeElement.dataset.act ?? ''"));
  }
}
