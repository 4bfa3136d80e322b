package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
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

  @ParameterizedTest
  @CsvSource({
    "1920, 1080, mm",
    "1280, 800, mm",
    "1280, 800, inch",
    "1024, 768, mm",
    "768, 1024, inch"
  })
  void theOperatorSeesTheWholeInstrumentAndItsButtons(int width, int height, String unit)
      throws Exception {
    looksIn(unit, width, height);
    shop.go("/station.html?station=A");
    shop.sees(".now", unit.equals("mm") ? "mm" : "in");
    shop.sees(".word", "Good");
    for (String part :
        List.of(
            ".word",
            ".figure",
            ".spread",
            ".ruler",
            ".part:first-child .value",
            ".part:last-child .value",
            ".now",
            ".recent svg",
            ".next")) {
      Await.until(() -> shop.inView(part, ".acts"));
    }
    for (String act : List.of("Measure again", "Undo", "Zero", "More")) {
      assertTrue(shop.inView("[data-act='" + act + "']", "none"), act);
    }
    Await.until(() -> shop.inView(".care-line", "none"));
    assertEquals("", shop.page.executeScript(CUT_OFF_IN_DIAL));
  }

  /** A phone in both directions, and a tablet at 200 % zoom. */
  @ParameterizedTest
  @CsvSource({"390, 844", "844, 390", "640, 400"})
  void onASmallScreenVerdictAndRadiusComeFirst(int width, int height) throws Exception {
    looksIn("mm", width, height);
    shop.go("/station.html?station=A");
    shop.sees(".word", "Good");
    for (String part : List.of(".word", ".figure", ".part:last-child .value", ".next")) {
      Await.until(() -> shop.inView(part, ".acts"));
    }
    Await.until(() -> shop.inView("[data-act='Undo']", "none"));
    assertEquals("", shop.page.executeScript(CUT_OFF_IN_DIAL));
  }

  /** Letters of 10 mm on a tablet of 10 inches with 149 pixels an inch; capitals are 0.711 em. */
  @ParameterizedTest
  @CsvSource({"mm", "inch"})
  void whatAnOperatorReadsFromTwoMetresIsTenMillimetresHigh(String unit) throws Exception {
    looksIn(unit, 1280, 800);
    shop.go("/station.html?station=A");
    shop.sees(".word", "Good");
    for (String part :
        List.of(
            ".word", ".figure", ".next", ".part:first-child .value", ".part:last-child .value")) {
      Await.until(() -> letterMm(part) >= 10);
    }
    assertTrue(letterMm(".figure") > 1.5 * letterMm(".word"));
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
    looksIn(unit, 390, 844);
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

  private static Stream<List<Screen>> screens() {
    return Stream.of(
        List.of(new Screen(1920, 1080), new Screen(1280, 800), new Screen(768, 1024)),
        List.of(new Screen(390, 844), new Screen(844, 390), new Screen(640, 400)));
  }

  /** Loaded on the first screen, then turned or made smaller to the others. */
  @ParameterizedTest
  @MethodSource("screens")
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
      looksIn("inch", screens.get(0).width, screens.get(0).height);
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

  private void looksIn(String unit, int width, int height) {
    shop.page.executeScript("localStorage.setItem('unit', arguments[0])", unit);
    shop.looksAt(width, height);
  }
}
