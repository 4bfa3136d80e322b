package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What matters is seen without scrolling, and nothing is wider than the screen. */
final class FirstScreenTest extends ShopTest {
  /** What is folded or out of sight on a phone is left out of the targets. */
  private static final String SMALL_TARGETS =
      "return [...document.querySelectorAll('main button, main select, main .jumps a')]"
          + ".map(each => [each.textContent, each.getBoundingClientRect().height])"
          + ".filter(([, height]) => height > 0 && height < 44).join('; ')";

  private static final String CUT_OFF =
      "return [...document.querySelectorAll('main .table, main .sheet')]"
          + ".filter(each => each.scrollWidth > each.clientWidth + 1)"
          + ".map(each => each.getAttribute('aria-label') ?? each.id).join('; ')";

  private static final String CUT_OFF_IN_DIAL =
      "return [...document.querySelectorAll('.dial, .dial p:not(.now)')]"
          + ".filter(each => each.clientWidth > 0 && each.scrollWidth > each.clientWidth + 1)"
          + ".map(each => each.className + ': ' + each.textContent).join('; ')";

  /** Loaded on the first screen, then turned or made smaller to the others. */
  private static Stream<Arguments> unitsOnScreens() {
    return Stream.of(
        arguments("mm", screens(1920, 1080, 1280, 800, 1024, 768)),
        arguments("inch", screens(768, 1024, 1280, 800)));
  }

  @ParameterizedTest
  @MethodSource("unitsOnScreens")
  void theOperatorSeesTheWholeInstrumentAndItsButtons(String unit, List<Screen> screens)
      throws Exception {
    looksIn(unit, screens.get(0));
    shop.go("/station.html?station=A");
    shop.sees(".now", unit.equals("mm") ? "mm" : "in");
    shop.sees(".word", "Good");
    for (Screen screen : screens) {
      shop.looksAt(screen.width, screen.height);
      areInView(
          ".acts",
          ".word",
          ".figure",
          ".spread",
          ".ruler",
          ".part:first-child .value",
          ".part:last-child .value",
          ".now",
          ".recent svg",
          ".next");
      for (String act : List.of("Measure again", "Undo", "Zero", "More")) {
        assertTrue(shop.inView("[data-act='" + act + "']", "none"), act);
      }
      areInView("none", ".care-line");
      assertEquals("", shop.page.executeScript(CUT_OFF_IN_DIAL), screen::toString);
      assertEquals("", shop.page.executeScript(CUT_OFF), screen::toString);
      if (screen.width == 1280) {
        isReadFromTwoMetres();
      }
    }
  }

  private static void areInView(String stuck, String... parts) throws Exception {
    for (String part : parts) {
      Await.until(() -> shop.inView(part, stuck), () -> part + " is not in view");
    }
  }

  /** Letters of 10 mm on a tablet of 10 inches with 149 pixels an inch; capitals are 0.711 em. */
  private static void isReadFromTwoMetres() throws Exception {
    for (String part :
        List.of(
            ".word", ".figure", ".next", ".part:first-child .value", ".part:last-child .value")) {
      Await.until(() -> letterMm(part) >= 10, () -> part + ": " + letterMm(part) + " mm");
    }
    assertTrue(letterMm(".figure") > 1.5 * letterMm(".word"));
  }

  /** A phone in both directions, and a tablet at 200 % zoom. */
  @Test
  void onASmallScreenVerdictAndRadiusComeFirst() throws Exception {
    List<Screen> screens = screens(390, 844, 844, 390, 640, 400);
    looksIn("mm", screens.get(0));
    shop.go("/station.html?station=A");
    shop.sees(".word", "Good");
    for (Screen screen : screens) {
      shop.looksAt(screen.width, screen.height);
      areInView(".acts", ".word", ".figure", ".part:last-child .value", ".next");
      areInView("none", "[data-act='Undo']");
      assertEquals("", shop.page.executeScript(CUT_OFF_IN_DIAL), screen::toString);
    }
  }

  private static final String BAR_WITH_ALERTS_PX =
      "const alerts = document.querySelector('.places a:last-child');"
          + "alerts.innerHTML = '<span>12<span> alerts</span></span>'; alerts.dataset.waiting = 'true';"
          + "return document.querySelector('.bar').offsetHeight";

  /** Phones of 320 to 412 px; they lay the scroll bar over the page, here it takes 15. */
  @ParameterizedTest
  @CsvSource({"335", "355", "375", "390", "405", "427"})
  void placesToGoAreInOneRowOnAPhone(int width) throws Exception {
    shop.looksAt(width, 640);
    shop.go("/station.html?station=A");
    shop.sees(".word", "Good");
    Await.until(() -> shop.number(BAR_WITH_ALERTS_PX) < 64);
  }

  /** As many read them; widths of screens in px left the bar in two rows, and the radius small. */
  @Test
  void withLettersHalfAsLargeAgainABarIsStillInOneRow() throws Exception {
    Blink.needed(browser);
    letters(24);
    try {
      looksIn("mm", new Screen(1280, 800));
      shop.go("/station.html?station=A");
      shop.sees(".word", "Good");
      assertTrue(shop.number("return document.querySelector('.bar').offsetHeight") < 96, "px");
      areInView(".acts", ".word", ".figure", ".part:last-child .value", ".next");
    } finally {
      letters(16);
    }
  }

  /** The usual size of a browser's letters, px. */
  private static void letters(int px) {
    Blink.run(browser, "Page.setFontSizes", Map.of("fontSizes", Map.of("standard", px)));
  }

  /**
   * At the front page, in what a phone's browser leaves of its height; both limits have figures.
   */
  @Test
  void onAPhoneTheLastPiecesStandBetweenLimitsThatAreApart() throws Exception {
    looksIn("mm", new Screen(390, 664));
    shop.go("/");
    shop.sees(".word", "Good");
    Await.until(() -> apartPx() > 15, () -> apartPx() + " px; " + shop.text("main"));
  }

  /** A station's page has more to say: where that leaves no room, there is no picture. */
  @Test
  void atAStationOnAPhoneThereIsNoPictureWhoseLimitsRunTogether() throws Exception {
    looksIn("mm", new Screen(390, 844));
    shop.go("/station.html?station=A");
    shop.sees(".word", "Good");
    for (int height = 844; height > 400; height -= 60) {
      shop.looksAt(390, height);
      Await.until(() -> !pictured() || apartPx() > 15, () -> apartPx() + " px");
    }
    assertFalse(pictured());
  }

  private static boolean pictured() {
    return Boolean.TRUE.equals(
        shop.page.executeScript(
            "return document.querySelector('.recent').checkVisibility({visibilityProperty: true})"));
  }

  private static double apartPx() {
    Object px =
        shop.page.executeScript(
            "return document.querySelector('.recent .allowed')?.getBoundingClientRect().height"
                + " ?? 0");
    return ((Number) Objects.requireNonNull(px)).doubleValue();
  }

  private static double letterMm(String selector) {
    Object px =
        shop.page.executeScript(
            "return parseFloat(getComputedStyle(document.querySelector(arguments[0])).fontSize)",
            selector);
    return ((Number) Objects.requireNonNull(px)).doubleValue() * 0.711 / 149 * 25.4;
  }

  @Test
  void theQualityEngineerSeesHowTheJobStandsWithItsChart() throws Exception {
    shop.looksAt(1280, 800);
    shop.goToJob("Canopy hoops");
    shop.sees("[data-figure='Cpk']", ".");
    Await.until(() -> shop.inView("section[aria-label='Control charts'] svg", "none"));
    for (String part : List.of(".verdicts", "[data-figure='Cp']", "[data-figure='Cpk']")) {
      assertTrue(shop.inView(part, "none"), part);
    }
  }

  @ParameterizedTest
  @CsvSource({"mm", "inch"})
  void onAPhoneTheVerdictComesFirstAndNothingIsLongOrCutOff(String unit) throws Exception {
    looksIn(unit, new Screen(390, 844));
    shop.goToJob("Door frame arches");
    shop.sees("#readings", "Exclude");
    Await.until(() -> shop.count("main .picture svg") >= 3);
    for (String part : List.of(".verdicts", "[data-figure='Cp']", "[data-figure='Cpk']")) {
      Await.until(() -> shop.inView(part, "none"));
    }
    String high = "document.documentElement.scrollHeight";
    assertEquals(
        "", shop.page.executeScript("return %s < 7000 ? '' : %s + ' px'".formatted(high, high)));
    assertEquals("", shop.page.executeScript(SMALL_TARGETS));
    assertEquals("", shop.page.executeScript(CUT_OFF));
  }

  private record Screen(int width, int height) {}

  private static List<Screen> screens(int... sizes) {
    return IntStream.range(0, sizes.length / 2)
        .mapToObj(i -> new Screen(sizes[2 * i], sizes[2 * i + 1]))
        .toList();
  }

  private static Stream<List<Screen>> largeAndSmall() {
    return Stream.of(
        screens(1920, 1080, 1280, 800, 768, 1024), screens(390, 844, 844, 390, 640, 400));
  }

  /** Loaded on the first screen, then turned or made smaller to the others. */
  @ParameterizedTest
  @MethodSource("largeAndSmall")
  void noPageIsWiderThanItsScreen(List<Screen> screens) throws Exception {
    for (String path :
        List.of(
            "/",
            "/station.html?station=A",
            "/wall.html",
            "/gauge.html",
            "/add-station.html",
            "/jobs.html",
            "/job-form.html",
            "/job.html?job=" + shop.jobId("Canopy hoops"),
            "/machines.html",
            "/machine.html?machine=roller%201")) {
      looksIn("inch", screens.get(0));
      shop.go(path);
      shop.find(path.contains("machine.html") || path.contains("job.html") ? "svg" : "h1");
      for (Screen screen : screens) {
        shop.looksAt(screen.width, screen.height);
        Await.until(() -> wideBy() == 0, () -> path + " at " + screen + ": " + wideBy() + " px");
      }
    }
  }

  /** By how much the page is wider than its screen, px. */
  private static long wideBy() {
    Object wide =
        shop.page.executeScript(
            "return document.documentElement.scrollWidth - document.documentElement.clientWidth");
    return (Long) Objects.requireNonNull(wide);
  }

  private void looksIn(String unit, Screen screen) {
    shop.page.executeScript("localStorage.setItem('unit', arguments[0])", unit);
    shop.looksAt(screen.width, screen.height);
  }
}
