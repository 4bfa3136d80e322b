package org.chordlog.web;

import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.chordlog.MemoryFolders;
import org.chordlog.Patience;
import org.chordlog.harness.Children;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/**
 * The installed browser and its driver, given explicitly so that nothing is fetched: the build of
 * the browser that draws pages but no windows, which takes a quarter less of the processor.
 */
final class Browser {
  private static final Path CHROMIUM = Path.of("/usr/lib/chromium/chromium-headless-shell");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  private Browser() {}

  static ChromeDriver open(Path profile, int width, int height) {
    demand();
    ChromeOptions options = new ChromeOptions();
    options.setBinary(openingAPage(profile).toString());
    options.addArguments(
        "--headless",
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

  /** This build opens no page by itself, and the driver waits for one. */
  private static Path openingAPage(Path profile) {
    try {
      Path script = Files.createDirectories(profile).resolve("browser");
      Files.writeString(script, "#!/bin/sh\nexec " + CHROMIUM + " \"$@\" about:blank\n");
      Files.setPosixFilePermissions(script, PosixFilePermissions.fromString("rwx------"));
      return script;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
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
