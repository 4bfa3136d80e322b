package org.chordlog.web;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever stands at a page can tell which program measures. */
final class ProgramShownTest extends BrowserTest {
  @TempDir Path directory;

  @Test
  void theSettingsSayWhatDecidesAMeasurement() throws Exception {
    try (Served served = new Served(directory)) {
      String part = served.json("/health").at("/program/measuringPart").asText();
      Visitor visitor = new Visitor(served, browser, "Anna");
      visitor.go("/");
      visitor.press("Anna");
      visitor.sees("#program", part.substring(0, 16));
      visitor.findsNothingGrave();
      visitor.leavesNothingOnTheConsole();
    }
  }
}
