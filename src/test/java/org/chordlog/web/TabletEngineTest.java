package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.chordlog.Await;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * What the engine of tablets that allow no other lays out otherwise than the installed browser. All
 * other tests of pages run in it by hand, with {@code -Dchordlog.engine=webkit}.
 */
@Tag("browser")
@Timeout(value = 10, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class TabletEngineTest {
  @TempDir static Path directory;
  private static RemoteWebDriver tablet;
  private static ShopPages shop;

  @BeforeAll
  static void open() {
    tablet = WebKit.open();
    shop = new ShopPages(directory, tablet);
  }

  @AfterAll
  static void close() {
    tablet.quit();
    shop.close();
  }

  /** As high as fits its content was as high as the screen, over the station's buttons. */
  @Test
  void aMessageCoversNoButton() throws Exception {
    shop.go("/station.html?station=A");
    shop.sees("#freshness", "Live");
    shop.press("More");
    shop.press("Write a note");
    shop.fill("Note", "mandrel greased");
    shop.press("Save note");
    shop.sees(".note", "Note saved.");
    shop.press("More");
    shop.sees("dialog", "New material lot");
    shop.press("Cancel");
    shop.findsNothingGrave();
  }

  /** A legend that fills its form stayed as wide as it was. */
  @Test
  void aFormIsNoWiderThanATabletThatWasTurned() throws Exception {
    shop.looksAt(1280, 800);
    shop.go("/job-form.html");
    shop.sees("legend", "Specification");
    shop.looksAt(800, 1000);
    Await.until(() -> shop.number("return innerWidth") == 800);
    assertEquals(
        800, shop.number("return document.documentElement.scrollWidth"), "px, width of the form");
  }
}
