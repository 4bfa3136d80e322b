package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.Await;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  @ParameterizedTest
  @CsvSource({"1280, 800, mm", "1280, 800, inch", "1024, 768, mm", "1024, 768, inch"})
  void theOperatorSeesDepthRadiusDecisionButtonsAndLastReadings(int width, int height, String unit)
      throws Exception {
    shop.page.executeScript("localStorage.setItem('unit', arguments[0])", unit);
    shop.looksAt(width, height);
    shop.go("/station.html?station=A");
    shop.sees("#depth", unit.equals("mm") ? "mm" : "in");
    shop.sees(".verdict", "Good");
    shop.sees("#fitness", "Indicator connected");
    for (String part :
        List.of(
            "#depth",
            "#radius",
            ".plus-minus",
            ".verdict",
            ".ruler",
            "#place",
            "#phase",
            "#trace",
            "#readings tbody tr:nth-child(1)",
            "#readings tbody tr:nth-child(3)")) {
      assertTrue(shop.inView(part, ".acts"), part);
    }
    for (String act : List.of("Measure", "Undo", "Next piece", "Zero", "Correction")) {
      assertTrue(shop.inView("[data-act='" + act + "']", "none"), act);
    }
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
  void onASmallTabletLastReadingsAreSeenUnderTwoTroubles(String unit) throws Exception {
    looksIn(unit, 768, 1024);
    long mounted = shop.served.store.gauges().mountedOn("A").orElseThrow().id();
    shop.served.indicator.unplug();
    mount(shop.served.store.gauges().add(Some.bridge("spare in " + unit), "tester").id());
    try {
      shop.go("/station.html?station=A");
      shop.sees("#readings tbody tr:nth-child(2)", ".");
      Await.until(() -> shop.count("#trouble .trouble") == 2, () -> shop.text("#trouble"));
      assertTrue(shop.inView("#readings tbody tr:nth-child(2)", ".acts"));
      assertEquals("", shop.page.executeScript(CUT_OFF.replace(".table", ".radius")));
    } finally {
      shop.served.indicator.plugIn();
      mount(mounted);
      Await.until(() -> shop.served.stations.status("A").link() == LinkState.OPEN);
    }
  }

  private static void mount(long bridge) throws Exception {
    String body = "{\"bridgeId\": " + bridge + "}";
    assertEquals(200, shop.served.post("/api/stations/A/bridge", body).statusCode());
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

  @ParameterizedTest
  @CsvSource({"1280, 800", "1024, 768", "768, 1024", "390, 844"})
  void noPageIsWiderThanItsScreen(int width, int height) throws Exception {
    looksIn("inch", width, height);
    for (String path :
        List.of(
            "/",
            "/station.html?station=A",
            "/gauge.html",
            "/add-station.html",
            "/jobs.html",
            "/job-form.html",
            "/job.html?job=" + shop.jobId("Canopy hoops"),
            "/machines.html",
            "/machine.html?machine=roller%201")) {
      shop.go(path);
      Await.until(
          () ->
              shop.count(path.contains("machine.html") || path.contains("job.html") ? "svg" : "h1")
                  >= 1);
      Object wide =
          shop.page.executeScript(
              "return document.documentElement.scrollWidth - document.documentElement.clientWidth");
      assertEquals(0L, wide, path + " at " + width);
    }
  }

  private void looksIn(String unit, int width, int height) {
    shop.page.executeScript("localStorage.setItem('unit', arguments[0])", unit);
    shop.looksAt(width, height);
  }
}
