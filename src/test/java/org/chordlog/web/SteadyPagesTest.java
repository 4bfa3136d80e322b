package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.JavascriptExecutor;

/** What comes late pushes nothing: the browser's own measure of shifts, and letters on paper. */
final class SteadyPagesTest extends ShopTest {
  /** The Web Vitals' bound of a good page is 0.1. */
  private static final double MOST = 0.02;

  /** A4 between the widest usual margins. */
  private static final int SHEET_PX = 698;

  private static final String SHIFTED =
      "const done = arguments[0]; let sum = 0; new PerformanceObserver((list) =>"
          + " list.getEntries().forEach((each) => (sum += each.value)))"
          + ".observe({ type: 'layout-shift', buffered: true }); setTimeout(() => done(sum), 200);";

  /** Of the control chart, in the px of the screen. */
  private static final String PICTURE =
      "return document.querySelector(\"section[aria-label='Control charts'] .picture\")";

  @ParameterizedTest
  @CsvSource({"1280, 900", "390, 844"})
  void aJobsChartHasItsRoomBeforeItComes(int width, int height) throws Exception {
    Blink.needed(browser);
    shop.looksAt(width, height);
    shop.goToJob("Canopy hoops");
    shop.counts("section[aria-label='Control charts'] .picture svg", 1);
    shop.counts("section[aria-label='Capability'] .picture svg", 1);
    Object shifted = ((JavascriptExecutor) browser).executeAsyncScript(SHIFTED);
    double sum = ((Number) java.util.Objects.requireNonNull(shifted)).doubleValue();
    assertTrue(sum < MOST, () -> "shifted by " + sum);
    double room = shop.number(PICTURE + ".offsetHeight");
    double drawn = shop.number(PICTURE + ".querySelector('svg').getBoundingClientRect().height");
    assertTrue(Math.abs(room - drawn) < 3, () -> room + " px kept for " + drawn);
  }

  @ParameterizedTest
  @CsvSource({"1280", "1920"})
  void lettersOfAChartAreLegibleOnPaper(int width) throws Exception {
    shop.looksAt(width, 900);
    shop.goToJob("Canopy hoops");
    shop.counts("section[aria-label='Control charts'] .picture svg", 1);
    double drawnPx = shop.number(PICTURE + ".querySelector('svg').viewBox.baseVal.width");
    double letterPx =
        shop.number(
            "return Math.min(...[...document.querySelectorAll('.picture svg text')]"
                + ".map((each) => parseFloat(getComputedStyle(each).fontSize)))");
    double points = letterPx * SHEET_PX / drawnPx * 72 / 96;
    assertTrue(points >= 7, () -> points + " pt");
  }
}
