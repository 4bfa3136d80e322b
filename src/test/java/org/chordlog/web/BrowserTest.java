package org.chordlog.web;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * Tests in a browser, which is as new for each class. The time-out ends only what hangs for good.
 */
@Tag("browser")
@Timeout(value = 10, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
abstract class BrowserTest {
  static RemoteWebDriver browser;

  @BeforeAll
  static void openBrowser() {
    browser = SharedBrowser.asNew();
  }

  @AfterAll
  static void leaveBrowser() {
    SharedBrowser.leave();
  }
}
