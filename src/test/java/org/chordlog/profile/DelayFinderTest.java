package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class DelayFinderTest {
  private static double depth(double s) {
    return 2.78 * EdgeShape.share(s - 280, 100, 60) * EdgeShape.share(1720 - s, 100, 60);
  }

  /** Forth and back over a piece; the length told is that of the delay later. */
  private static DelayFinder run(double feed, double rate, double delayMs, int ways) {
    DelayFinder finder = new DelayFinder(false);
    double end = 1900 / feed;
    for (int i = 0; i < ways * end * rate; i++) {
      double t = i / rate;
      finder.offer(
          Math.round(t * 1e9),
          Math.round(place(t + delayMs / 1000, feed, end) * 1e6),
          Math.round(depth(place(t, feed, end) + 50) * 1e6));
    }
    return finder;
  }

  private static double place(double t, double feed, double end) {
    return t <= end ? feed * t : feed * Math.abs(2 * end - t);
  }

  @ParameterizedTest
  @CsvSource({
    "100, 20, 30",
    "200, 20, 30",
    "200, 100, 30",
    "200, 5, 30",
    "100, 50, -12",
    "50, 20, 0"
  })
  void isFound(double feed, double rate, double delayMs) {
    DelayFinder.Delay delay = run(feed, rate, delayMs, 2).delay();
    assertEquals(delayMs, delay.ms(), 3);
    assertTrue(delay.uncertaintyMs() >= 1 && delay.uncertaintyMs() < 6, delay.toString());
  }

  /** As where a piece leaves the line the way it came in to be bent further. */
  @Test
  void aThirdWayIsLeftOut() {
    assertEquals(run(100, 20, 30, 2).delay().ms(), run(100, 20, 30, 3).delay().ms(), 0.5);
  }

  @Test
  void oneWayTellsNothingAndSoMuchIsNotBelieved() {
    assertThrows(BadInput.class, () -> run(100, 20, 30, 1).delay());
    assertThrows(BadInput.class, () -> run(100, 20, 300, 2).delay());
  }
}
