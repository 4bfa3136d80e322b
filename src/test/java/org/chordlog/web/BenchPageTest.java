package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.logging.Level;
import org.chordlog.Await;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;

/** The operator's first page in a real browser. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class BenchPageTest {
  @TempDir Path directory;

  @Test
  void readingsAppearWithoutAReload() throws Exception {
    try (Served served = new Served(directory.resolve("data"))) {
      served.job();
      served.zeroAndFree();
      ChromeDriver page = Browser.open(directory.resolve("profile"), 1280, 800);
      try {
        watch(served, page);
      } finally {
        page.quit();
      }
    }
  }

  private static void watch(Served served, ChromeDriver page) throws Exception {
    page.get(served.uri("/").toString());
    Await.until(() -> text(page, "#freshness").equals("Live"));
    page.executeScript("window.sameDocument = true");
    for (int taken = 1; taken <= 3; taken++) {
      touch(served, page, 2.733, taken);
    }
    Await.until(() -> text(page, "[data-figure='n']").equals("3"));
    assertTrue(text(page, "#readings tr td:nth-child(4)").startsWith("2.73"));
    assertEquals("Conforms", text(page, "#decision"));
    assertTrue(text(page, "#plus-minus").startsWith("±"), text(page, "#plus-minus"));
    assertEquals(1, page.findElements(By.cssSelector("#chart svg")).size());
    assertEquals(true, page.executeScript("return window.sameDocument"));
    assertEquals(List.of(), elsewhere(page));
    assertEquals(List.of(), faults(page));
  }

  /** Puts the bridge on the piece, sees the reading come, and lifts the bridge again. */
  private static void touch(Served served, ChromeDriver page, double depthMm, int rows)
      throws Exception {
    served.indicator.show(depthMm);
    Await.until(() -> page.findElements(By.cssSelector("#readings tr")).size() == rows);
    Await.until(() -> text(page, "#depth").startsWith("2.73"));
    served.indicator.show(TcpIndicator.FREE_MM);
    Await.until(() -> text(page, "#phase").equals("free"));
  }

  private static String text(ChromeDriver page, String selector) {
    Object text =
        page.executeScript(
            "return document.querySelector(arguments[0])?.firstChild?.textContent ?? ''", selector);
    return String.valueOf(text);
  }

  /** Addresses that were asked for and are not the service's. */
  private static @Nullable Object elsewhere(ChromeDriver page) {
    return page.executeScript(
        "return performance.getEntriesByType('resource').map(e => e.name)"
            + ".filter(n => new URL(n).origin !== location.origin)");
  }

  private static List<String> faults(ChromeDriver page) {
    return page.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        .toList();
  }
}
