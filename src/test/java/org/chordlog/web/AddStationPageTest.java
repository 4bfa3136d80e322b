package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import org.chordlog.capture.Direction;
import org.chordlog.station.StationSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fitter adds indicators of unknown form that send by themselves, each click counted. */
final class AddStationPageTest extends BrowserTest {
  private static final String HELD = "4.3210";
  @TempDir Path directory;

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  @Test
  void twoChannelsAsOneDepth() throws Exception {
    HandIndicator.Form form =
        (mm, asked) -> bytes(String.format(Locale.ROOT, "A:%+07.3f B:%+07.3f\r\n", mm, -0.25 * mm));
    try (HandIndicator indicator = new HandIndicator(50, form);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served, browser);
      fitter.go("/add-station.html");
      fitter.listenAt(indicator);
      fitter.picks(indicator, HELD);
      fitter.pushesIn(indicator);
      fitter.choose("Depth is", "channel 2 less channel 1");
      assertEquals("counts down", fitter.chosen("Pushing the plunger in"));
      fitter.choose("Depth is", "channel 1 less channel 2");
      fitter.names("two-1");
      StationSettings station = fitter.added(served, "two-1");
      assertEquals(Direction.COUNTS_UP, station.direction());
      assertEquals(1, Objects.requireNonNull(station.combine()).first());
      assertEquals(2, Objects.requireNonNull(station.combine()).second());
    }
  }

  @Test
  void aReversedIndicatorThatSendsOnceASecond() throws Exception {
    HandIndicator.Form form = (mm, asked) -> bytes(String.format(Locale.ROOT, "%9.3f\r\n", -mm));
    try (HandIndicator indicator = new HandIndicator(1000, form);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served, browser);
      fitter.go("/add-station.html");
      fitter.listenAt(indicator);
      fitter.picks(indicator, "−" + HELD);
      fitter.pushesIn(indicator);
      assertEquals("counts down", fitter.chosen("Pushing the plunger in"));
      fitter.names("reversed-1");
      fitter.sees(".now", "indicator shows −4.321");
      StationSettings station = fitter.added(served, "reversed-1");
      assertEquals(Direction.COUNTS_DOWN, station.direction());
    }
  }

  /** A hand that presses the data button every 0.6 s, wherever the plunger is. */
  @Test
  void anIndicatorThatSendsWhenItsDataButtonIsPressed() throws Exception {
    HandIndicator.Form form = (mm, asked) -> bytes(String.format(Locale.ROOT, "%9.3f\r\n", mm));
    try (HandIndicator indicator = new HandIndicator(600, form);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served, browser);
      fitter.go("/add-station.html");
      fitter.counts("[name='way']", 1);
      fitter.choose("How does it send?", "when its data button is pressed");
      fitter.listenAt(indicator);
      fitter.sees("#heard", "pick the line");
      fitter.findsNothingGrave();
      fitter.click("#heard tbody button");
      fitter.clicks++;
      fitter.sees("#pushed", "press the data button with the plunger out");
      fitter.pushesIn(indicator);
      fitter.names("button-1");
      StationSettings station = fitter.added(served, "button-1");
      assertEquals(Direction.COUNTS_UP, station.direction());
      assertTrue(
          station.profile().buttonOnly() && Boolean.TRUE.equals(station.capture().everyFrame()));
      assertEquals(0, station.silenceSeconds());
    }
  }

  @Test
  void nothingIsProposedWhileThePlungerStands() throws Exception {
    try (HandIndicator indicator =
            new HandIndicator(50, (mm, asked) -> bytes(mm > 0 ? "+1.001\r\n" : "+1.002\r\n"));
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served, browser);
      fitter.go("/add-station.html");
      fitter.listenAt(indicator);
      fitter.sees("#heard", "The plunger was not seen to move");
      assertEquals(0, fitter.count("#heard table"));
      fitter.leavesNothingOnTheConsole();
    }
  }
}
