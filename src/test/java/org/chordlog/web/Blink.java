package org.chordlog.web;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.remote.RemoteWebDriver;

/** The installed browser. */
final class Blink implements Engine {
  /** But not the cache: it holds nothing that another service answers otherwise. */
  @Override
  public boolean forgets(RemoteWebDriver browser) {
    forget(browser, "*");
    run(browser, "Browser.setDownloadBehavior", Map.of("behavior", "default"));
    run(browser, "Browser.resetPermissions", Map.of());
    return true;
  }

  @Override
  public void forget(RemoteWebDriver browser, String origin) {
    String types = "cookies,local_storage,indexeddb,websql,service_workers,shared_storage";
    signOut(browser);
    run(browser, "Storage.clearDataForOrigin", Map.of("origin", origin, "storageTypes", types));
  }

  @Override
  public void signOut(RemoteWebDriver browser) {
    run(browser, "Network.clearBrowserCookies", Map.of());
  }

  @Override
  public void looksAt(RemoteWebDriver browser, int width, int height) {
    run(
        browser,
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  @Override
  public void looksAtAll(RemoteWebDriver browser) {
    run(browser, "Emulation.clearDeviceMetricsOverride", Map.of());
  }

  @Override
  public void type(WebElement field, String text) {
    field.sendKeys(Keys.chord(Keys.CONTROL, "a"), Keys.DELETE, text);
  }

  @Override
  public void define(RemoteWebDriver browser, String script) {
    run(browser, "Runtime.evaluate", Map.of("expression", script));
  }

  @Override
  public List<String> complaints(RemoteWebDriver browser) {
    return browser.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        .toList();
  }

  /** Skips, in another browser, a test that needs a command which only the installed one has. */
  static void needed(RemoteWebDriver browser) {
    assumeTrue(browser instanceof ChromeDriver, "needs a command of the installed browser's own");
  }

  static Map<String, Object> run(
      RemoteWebDriver browser, String command, Map<String, Object> with) {
    return ((ChromeDriver) browser).executeCdpCommand(command, with);
  }
}
