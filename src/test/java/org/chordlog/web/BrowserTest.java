package org.chordlog.web;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;

/** Tests of a class that share one browser. The time-out ends only what hangs for good. */
@Tag("browser")
@Timeout(value = 10, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
abstract class BrowserTest {
  @TempDir static Path profile;
  static ChromeDriver browser;

  @BeforeAll
  static void openBrowser() {
    browser = Browser.open(profile, 1280, 900);
  }

  @AfterAll
  static void quitBrowser() {
    if (browser != null) {
      browser.quit();
    }
  }
}
