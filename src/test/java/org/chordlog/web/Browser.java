package org.chordlog.web;

import static org.junit.jupiter.api.Assumptions.abort;

import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.MemoryFolders;
import org.chordlog.Patience;
import org.chordlog.harness.Children;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** The installed browser and its driver, given explicitly so that nothing is fetched. */
final class Browser {
  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  private Browser() {}

  static ChromeDriver open(Path profile, int width, int height) {
    demand();
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toString());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-background-networking",
        "--disable-component-update",
        "--no-first-run",
        "--user-data-dir=" + profile,
        "--window-size=" + width + "," + height);
    if (!MemoryFolders.roomy()) {
      options.addArguments("--disable-dev-shm-usage");
    }
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(DRIVER.toFile())
            .withTimeout(Patience.now())
            .build();
    ChromeDriver driver = new ChromeDriver(service, options);
    Children.watchAll();
    return driver;
  }

  /** Skipped, loudly, only where no browser is installed and this is not a CI run. */
  private static void demand() {
    if (Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER)) {
      return;
    }
    String message = "NO BROWSER TEST: " + CHROMIUM + " or " + DRIVER + " is not installed";
    if (System.getenv("CI") != null) {
      throw new AssertionError(message);
    }
    System.err.println(message);
    abort(message);
  }
}
