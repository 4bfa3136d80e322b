package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.chordlog.Await;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.print.PageSize;
import org.openqa.selenium.print.PrintOptions;

/** Where grounds are left out: on paper, and on a screen whose reader has chosen few colours. */
final class FewColoursTest extends ShopTest {
  @BeforeAll
  static void inTheInstalledBrowser() {
    Blink.needed(browser);
  }

  @BeforeEach
  void atTheStation() throws Exception {
    shop.looksAt(1280, 800);
    shop.go("/station.html?station=A");
    shop.sees(".word", "Good");
  }

  @AfterEach
  void usual() {
    show("", Map.of());
  }

  /** The mark of the verdict was a ground; the label lay below the ground of the figure's line. */
  @ParameterizedTest
  @CsvSource({"light", "dark"})
  void markAndLabelAreThereWithFewColoursToo(String scheme) throws Exception {
    String mark = ".verdict";
    int markPx = inkPx(mark, 0.08);
    int labelPx = inkPx(".reading .caption", 1);
    show("", Map.of("forced-colors", "active", "prefers-color-scheme", scheme));
    assertTrue(markPx > 400, markPx + " px in all colours");
    assertTrue(inkPx(mark, 0.08) > 0.8 * markPx, () -> "of " + markPx + " px of the mark");
    assertTrue(
        inkPx(".reading .caption", 1) > 0.8 * labelPx, () -> "of " + labelPx + " px of the label");
  }

  /** A light theme chosen in the settings left the charts dark on a dark ground. */
  @Test
  void fewColoursAreThoseOfTheDevice() throws Exception {
    shop.page.executeScript("localStorage.setItem('theme', 'light')");
    show("", Map.of("forced-colors", "active", "prefers-color-scheme", "dark"));
    shop.counts("html[data-theme='dark']", 1);
  }

  @Test
  void onPaperAreWhatIsReadAndTheSafetyLineAndNotWhatIsPressed() throws Exception {
    List<String> pressed = List.of(".bar", "#acts", ".now-live");
    for (String each : pressed) {
      Await.until(() -> shop.find(each).isDisplayed(), () -> each);
    }
    show("print", Map.of());
    assertEquals("rgba(0, 0, 0, 1)", shop.find(".verdict").getCssValue("color"));
    for (String read : List.of(".figure", ".next", ".care-line")) {
      assertTrue(shop.find(read).isDisplayed(), read);
    }
    for (String each : pressed) {
      assertFalse(shop.find(each).isDisplayed(), each);
    }
  }

  /** The chart of the last pieces was as wide as on the screen, and the sheet had no date. */
  @Test
  void aPrintedStationSaysWhenItWasPrintedAndItsChartIsDrawnForTheSheet() throws Exception {
    shop.looksAt(1600, 900);
    Await.until(() -> shop.count(".recent text") > 0);
    shop.page.executeScript(NOTE_WIDTH_ON_PAPER);
    PrintOptions options = new PrintOptions();
    options.setPageSize(PageSize.ISO_A4);
    byte[] pdf = Base64.getDecoder().decode(browser.print(options).getContent());
    String printed = printed(pdf);
    assertTrue(printed.contains("Printed"), printed);
    assertTrue(printed.contains("lockedout"), printed);
    assertTrue(shop.number("return window.onPaper") <= HALF_A4_PX);
    shop.counts(".printed", 0);
  }

  private static final int HALF_A4_PX = 396;

  private static final String NOTE_WIDTH_ON_PAPER =
      "addEventListener('beforeprint', () => {"
          + "window.onPaper = document.querySelector('.recent svg').viewBox.baseVal.width; });";

  /** Without blanks, which letters set apart seem to have between them. */
  private static String printed(byte[] pdf) throws IOException {
    try (PdfReader reader = new PdfReader(pdf)) {
      StringBuilder all = new StringBuilder();
      for (int page = 1; page <= reader.getNumberOfPages(); page++) {
        all.append(new PdfTextExtractor(reader).getTextFromPage(page).replaceAll("\\s", ""));
      }
      return all.toString();
    }
  }

  private static void show(String media, Map<String, String> features) {
    List<Map<String, String>> named =
        features.entrySet().stream()
            .map(each -> Map.of("name", each.getKey(), "value", each.getValue()))
            .toList();
    Blink.run(browser, "Emulation.setEmulatedMedia", Map.of("media", media, "features", named));
  }

  /** Pixels that stand out from the ground, in that share of an element from its left. */
  private static int inkPx(String selector, double share) throws Exception {
    BufferedImage all = picture(selector);
    int groundGrey = grey(all, all.getWidth() - 1, 1);
    int width = (int) (share * all.getWidth());
    return (int)
        IntStream.range(0, width * all.getHeight())
            .map(i -> grey(all, i % width, i / width))
            .filter(grey -> Math.abs(grey - groundGrey) > 80)
            .count();
  }

  private static BufferedImage picture(String selector) throws Exception {
    byte[] png = shop.find(selector).getScreenshotAs(OutputType.BYTES);
    try (ByteArrayInputStream in = new ByteArrayInputStream(png)) {
      return ImageIO.read(in);
    }
  }

  private static int grey(BufferedImage picture, int x, int y) {
    Color color = new Color(picture.getRGB(x, y));
    return (color.getRed() + color.getGreen() + color.getBlue()) / 3;
  }
}
