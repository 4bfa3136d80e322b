package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.MemoryFolders;
import org.chordlog.harness.Directories;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * One browser for all tests of this process, since its start takes longer than most tests. Each
 * class of tests finds it as after a start: one empty window, nothing stored, nothing allowed; only
 * modules and styles of the pages are still in its cache. Used by one class at a time; ends with
 * the process.
 */
final class SharedBrowser {
  private static final String INSTALLED = "blink";
  private static final String ENGINE = System.getProperty("chordlog.engine", INSTALLED);
  private static @Nullable RemoteWebDriver open;

  private SharedBrowser() {}

  /** Another browser where the last one has died. */
  static RemoteWebDriver asNew() {
    RemoteWebDriver last = open;
    RemoteWebDriver browser = last == null ? started() : last;
    if (last != null && !asNew(last)) {
      last.quit();
      browser = started();
    }
    open = browser;
    return browser;
  }

  /** Leaves the page, so that it asks no longer for a service that has ended. */
  static void leave() {
    if (open != null) {
      open.get("about:blank");
    }
  }

  /** Leaves the page, and is signed in nowhere. */
  static void signOut() {
    if (open != null) {
      Engine.of(open).signOut(open);
      leave();
    }
  }

  /** Leaves a page of the service that was there before, and forgets what it has stored. */
  static void forget(int port) {
    if (open != null) {
      leave();
      Engine.of(open).forget(open, "http://" + WebSettings.LOOPBACK + ":" + port);
    }
  }

  private static RemoteWebDriver started() {
    try {
      Path profile = MemoryFolders.create("browser");
      RemoteWebDriver browser = opened(profile);
      Runtime.getRuntime().addShutdownHook(new Thread(() -> end(browser, profile)));
      return browser;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static RemoteWebDriver opened(Path profile) {
    return switch (ENGINE) {
      case INSTALLED -> Browser.open(profile, 1280, 900);
      case "webkit" -> WebKit.open();
      case "gecko" -> Gecko.open();
      default ->
          throw new IllegalArgumentException(
              "-Dchordlog.engine: not '" + ENGINE + "' but " + INSTALLED + ", webkit or gecko");
    };
  }

  /** Not one of the other engines, which are asked for by hand. */
  static boolean isInstalled() {
    return ENGINE.equals(INSTALLED);
  }

  private static void end(RemoteWebDriver browser, Path profile) {
    try {
      browser.quit();
      Await.until(() -> deleted(profile));
    } catch (Exception e) {
      System.err.println("the browser of the tests did not end well: " + e);
    }
  }

  /** Not while the browser still writes there as it ends. */
  private static boolean deleted(Path profile) {
    try {
      Directories.delete(profile);
    } catch (IOException | UncheckedIOException changing) {
      return false;
    }
    return true;
  }

  private static boolean asNew(RemoteWebDriver browser) {
    try {
      empty(browser);
      return Engine.of(browser).forgets(browser);
    } catch (WebDriverException dead) {
      return false;
    }
  }

  private static void empty(RemoteWebDriver browser) {
    browser.switchTo().newWindow(WindowType.TAB);
    String now = browser.getWindowHandle();
    for (String window : browser.getWindowHandles()) {
      if (!window.equals(now)) {
        browser.switchTo().window(window).close();
      }
    }
    browser.switchTo().window(now);
  }
}
