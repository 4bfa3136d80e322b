package org.chordlog.web;

import java.nio.file.Path;
import org.chordlog.Await;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The operator's pages by axe, in light and dark, with and without readings, dialogs too. */
final class AccessiblePagesTest extends BrowserTest {
  @TempDir Path directory;

  @Test
  void noPageOfTheOperatorHasAGraveFinding() throws Exception {
    try (Served served = new Served(directory.resolve("data"))) {
      Visitor visitor = new Visitor(served, browser, "Anna");
      empty(visitor);
      served.job();
      served.zeroAndFree();
      for (int taken = 1; taken <= 6; taken++) {
        touch(served, 2.73 + 0.001 * taken, taken);
      }
      filled(visitor);
      visitor.leavesNothingOnTheConsole();
    }
  }

  private static void touch(Served served, double depthMm, int taken) throws Exception {
    served.indicator.show(depthMm);
    Await.until(() -> served.stations.status("A").counts().readings() == taken);
    served.indicator.show(TerminalIndicator.FREE_MM);
    long seen = served.stations.status("A").counts().samples();
    Await.until(() -> served.stations.status("A").counts().samples() > seen + 60);
  }

  private static void empty(Visitor visitor) throws Exception {
    visitor.go("/");
    visitor.sees("#one-needs", "No job chosen");
    visitor.findsNothingGrave();
    visitor.go("/station.html?station=A");
    visitor.sees(".word", "No zero");
    visitor.findsNothingGrave();
  }

  private static void filled(Visitor visitor) throws Exception {
    visitor.go("/");
    visitor.counts("#chart svg", 1);
    visitor.findsNothingGrave();
    visitor.go("/station.html?station=A");
    visitor.sees(".word", "Good");
    visitor.findsNothingGrave();
    for (String dialog : new String[] {"Zero", "Undo", "More", "Settings"}) {
      visitor.press(dialog.equals("Settings") ? "Anna" : dialog);
      visitor.counts("dialog[open]", 1);
      visitor.findsNothingGrave();
      visitor.press("Cancel");
      visitor.counts("dialog", 0);
    }
    visitor.go("/gauge.html?station=A");
    visitor.sees("#gauge", "Which bridge suits the job?");
    visitor.findsNothingGrave();
  }
}
