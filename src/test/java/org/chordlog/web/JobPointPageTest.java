package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Reading;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** A point of a job's chart, and what its signals lead to. */
final class JobPointPageTest extends ShopTest {
  /** Names of limits and the newest value of a chart under what is told of its point. */
  private static final String COVERED =
      """
      const callout = document.querySelector('.callout').getBoundingClientRect();
      return [...document.querySelectorAll('.picture:has(.callout) svg text')].filter((each) => {
        const word = each.getBoundingClientRect();
        return /^(USL|LSL|UCL|LCL|CL|Last) /.test(each.textContent)
          && Math.min(callout.right, word.right) - Math.max(callout.left, word.left) > 3
          && Math.min(callout.bottom, word.bottom) - Math.max(callout.top, word.top) > 3;
      }).map((each) => each.textContent).join(', ');
      """;

  @Test
  void aPointTellsAllByKeyboardAloneAndAReadingIsLeftOutAndTakenIn() throws Exception {
    shop.goToJob("Canopy hoops");
    WebElement chart = shop.find("section[aria-label='Control charts'] .picture");
    shop.page.executeScript("arguments[0].focus()", chart);
    chart.sendKeys(Keys.HOME);
    shop.sees(".callout", "Piece 1");
    chart.sendKeys(Keys.ENTER);
    shop.counts(".side-item", 3);
    shop.press("Show depth");
    shop.counts(".side svg.trace polyline", 1);
    long reading =
        Long.parseLong(String.valueOf(shop.find(".side-item").getDomAttribute("data-reading")));
    WebElement leave = shop.find(".side-item .row button:last-child");
    leave.sendKeys(Keys.ENTER);
    shop.sees("dialog", "Piece 1, start: ");
    shop.sees("dialog", "Same piece measured twice");
    shop.press("Another reason…");
    shop.find("dialog [name='reason']").sendKeys("bridge on the weld", Keys.ENTER);
    shop.sees(".side-item", "Excluded: bridge on the weld");
    assertTrue(excluded(reading));
    shop.click(".side-item .row button:last-child");
    shop.find("dialog [name='reason']").sendKeys("weld was elsewhere", Keys.ENTER);
    Await.until(() -> !excluded(reading));
    Await.until(() -> !shop.text(".side-item").contains("Excluded"));
  }

  /** By piece, position and radius, in the list and in the dialog that covers it. */
  @Test
  void anExcludedReadingIsNamedAsPeopleNameIt() throws Exception {
    long job = shop.jobId("Handrail 42.4");
    Reading reading = shop.served.store.readings().latestOfJob(job, Long.MAX_VALUE, 1).get(0);
    String body = "{\"excluded\": true, \"reason\": \"bridge tilted\"}";
    String path = "/api/readings/" + reading.id() + "/exclusion";
    assertEquals(200, shop.served.post(path, body).statusCode());
    String named = "Piece " + reading.piece() + ", " + reading.position() + ": ";
    shop.goToJob("Handrail 42.4");
    shop.sees("[aria-label='Left out']", "excluded and counts in no figure of this job.");
    shop.click("#events details summary");
    shop.sees("#events details table", named);
    shop.click("#events details table button");
    shop.sees("dialog", named);
    assertFalse(shop.text("dialog").contains("Reading " + reading.id()), shop.text("dialog"));
    shop.find("dialog [name='reason']").sendKeys("it was not", Keys.ENTER);
    shop.counts("#events details table", 0);
    shop.findsNothingGrave();
  }

  private static boolean excluded(long reading) {
    return shop.served.store.readings().exclusionsOfJob(shop.jobId("Canopy hoops")).stream()
        .filter(each -> each.readingId() == reading)
        .reduce((older, newer) -> newer)
        .filter(each -> each.excluded())
        .isPresent();
  }

  @Test
  void aBrokenTestIsToldInWords() throws Exception {
    shop.goToJob("Gutter ring");
    shop.sees("section", "beyond a control limit");
    assertFalse(shop.text("main").contains("BEYOND_LIMIT"));
    WebElement chart = shop.find("section[aria-label='Control charts'] .picture");
    shop.page.executeScript("arguments[0].focus()", chart);
    chart.sendKeys(Keys.END);
    for (int i = 0; i < 80 && !shop.text(".callout").contains("beyond a control limit"); i++) {
      chart.sendKeys(Keys.ARROW_LEFT);
    }
    assertTrue(shop.text(".callout").contains("beyond a control limit"), shop.text(".callout"));
  }

  @Test
  void whatIsToldOfAPointCoversNoLimitsNameOfItsChart() throws Exception {
    for (int[] size : new int[][] {{768, 1024}, {844, 390}, {390, 844}}) {
      shop.looksAt(size[0], size[1]);
      shop.goToJob("Canopy hoops");
      shop.counts("section[aria-label='Control charts'] .picture svg", 1);
      WebElement chart = shop.find("section[aria-label='Control charts'] .picture");
      shop.page.executeScript(
          "arguments[0].scrollIntoView({ block: 'center' }); arguments[0].focus()", chart);
      for (Keys key : List.of(Keys.END, Keys.PAGE_UP, Keys.HOME)) {
        chart.sendKeys(key);
        shop.sees(".callout", "Piece ");
        assertEquals("", shop.page.executeScript(COVERED), size[0] + " px, " + key.name());
      }
    }
    shop.looksAt(1280, 800);
  }

  /** A station's "Not in control" leads there, where the cause is recorded. */
  @Test
  void aLinkToTheSignalsShowsThemOnceThePageIsThere() throws Exception {
    shop.go("/job.html?job=" + shop.jobId("Gutter ring") + "#signals");
    shop.sees("#signals", "Record the cause");
    Await.until(
        () ->
            Boolean.TRUE.equals(
                shop.page.executeScript(
                    "const { top } = document.querySelector('#signals').getBoundingClientRect();"
                        + "return scrollY > 0 && top >= -1 && top < innerHeight / 2")));
  }
}
