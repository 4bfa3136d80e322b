package org.chordlog.web;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;

/** Tests that share one browser at the pages of an invented shop. */
abstract class ShopTest extends BrowserTest {
  @TempDir static Path directory;
  static ShopPages shop;

  @BeforeAll
  static void open() {
    shop = new ShopPages(directory, browser);
  }

  @AfterAll
  static void close() {
    shop.close();
  }

  @AfterEach
  void nothingOnTheConsole() {
    shop.leavesNothingOnTheConsole();
  }
}
