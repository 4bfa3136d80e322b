package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Browsers that bar what pages usually may, or are too old. */
final class PlainBrowserTest extends ShopTest {
  private static final String BARRED =
      "for (const each of ['localStorage', 'sessionStorage']) Object.defineProperty(window, each,"
          + "{get() { throw new DOMException('The operation is insecure.', 'SecurityError'); }});";

  private String script = "";

  @BeforeAll
  static void inTheInstalledBrowser() {
    Blink.needed(browser);
  }

  @AfterEach
  void asUsual() {
    Map<String, Object> which = Map.of("identifier", script);
    Blink.run(browser, "Page.removeScriptToEvaluateOnNewDocument", which);
  }

  /** Runs before all others on each page. */
  private void begins(String each) {
    Map<String, Object> added =
        Blink.run(browser, "Page.addScriptToEvaluateOnNewDocument", Map.of("source", each));
    script = Objects.requireNonNull((String) added.get("identifier"));
  }

  /** As some do by a strict setting; the forms were not shown. */
  @Test
  void formsAreFilledAndSentWhereNothingMayBeStored() throws Exception {
    begins(BARRED);
    shop.go("/job-form.html?job=" + shop.jobId("Canopy hoops"));
    shop.fillNamed("part", "hoop 7");
    assertEquals("hoop 7", shop.find("[name='part']").getAttribute("value"));
    shop.go("/station.html?station=A");
    shop.press("More");
    shop.press("Write a note");
    shop.fill("Note", "mandrel greased");
    shop.press("Save note");
    shop.fill("Name or initials", "quality");
    shop.press("Continue");
    shop.sees(".note", "Note saved.");
  }

  @Test
  void aBrowserThatIsTooOldIsToldSo() throws Exception {
    shop.go("/jobs.html");
    shop.sees("h1", "Jobs");
    shop.counts("[role=alert]", 0);
    begins("delete HTMLElement.prototype.popover");
    shop.go("/jobs.html");
    shop.sees("[role=alert]", "Take one of mid-2024 or newer");
  }
}
