package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Map;
import org.chordlog.Await;
import org.chordlog.MemoryFolders;
import org.chordlog.harness.Directories;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * One browser for all tests of this process, since its start takes longer than most tests. Each
 * class of tests finds it as after a start: one empty window, nothing stored, nothing allowed; only
 * modules and styles of the pages are still in its cache. Used by one class at a time; ends with
 * the process.
 */
final class SharedBrowser {
  private static @Nullable ChromeDriver open;

  private SharedBrowser() {}

  /** Another browser where the last one has died. */
  static ChromeDriver asNew() {
    ChromeDriver browser = open == null ? started() : open;
    try {
      empty(browser);
    } catch (WebDriverException dead) {
      browser.quit();
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
      leave();
      open.executeCdpCommand("Network.clearBrowserCookies", Map.of());
    }
  }

  /** Leaves a page of the service that was there before, and forgets what it has stored. */
  static void forget(int port) {
    if (open != null) {
      leave();
      forget(open, "http://" + WebSettings.LOOPBACK + ":" + port);
    }
  }

  private static ChromeDriver started() {
    try {
      Path profile = MemoryFolders.create("browser");
      ChromeDriver browser = Browser.open(profile, 1280, 900);
      Runtime.getRuntime().addShutdownHook(new Thread(() -> end(browser, profile)));
      return browser;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void end(ChromeDriver browser, Path profile) {
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

  private static void empty(ChromeDriver browser) {
    browser.switchTo().newWindow(WindowType.TAB);
    String now = browser.getWindowHandle();
    for (String window : browser.getWindowHandles()) {
      if (!window.equals(now)) {
        browser.switchTo().window(window).close();
      }
    }
    browser.switchTo().window(now);
    forget(browser);
  }

  private static void forget(ChromeDriver browser) {
    browser.executeCdpCommand("Network.clearBrowserCookies", Map.of());
    forget(browser, "*");
    browser.executeCdpCommand("Browser.setDownloadBehavior", Map.of("behavior", "default"));
    browser.executeCdpCommand("Browser.resetPermissions", Map.of());
  }

  /** But not the cache: it holds nothing that another service answers otherwise. */
  private static void forget(ChromeDriver browser, String origin) {
    String types = "cookies,local_storage,indexeddb,websql,service_workers,shared_storage";
    browser.executeCdpCommand(
        "Storage.clearDataForOrigin", Map.of("origin", origin, "storageTypes", types));
  }
}
