package org.chordlog.web;

import java.util.List;
import java.util.Objects;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.remote.RemoteWebDriver;

/** What every driver has, and nothing else. */
final class OtherEngine implements Engine {
  @Override
  public boolean forgets(RemoteWebDriver browser) {
    return false;
  }

  @Override
  public void forget(RemoteWebDriver browser, String origin) {
    browser.get(origin + "/health");
    signOut(browser);
    browser.executeScript("localStorage.clear(); sessionStorage.clear();");
  }

  @Override
  public void signOut(RemoteWebDriver browser) {
    browser.manage().deleteAllCookies();
  }

  @Override
  public void looksAt(RemoteWebDriver browser, int width, int height) {
    WebDriver.Window window = browser.manage().window();
    window.setSize(new Dimension(width, height));
    int frameWidth = width - pixels(browser, "innerWidth");
    int frameHeight = height - pixels(browser, "innerHeight");
    window.setSize(new Dimension(width + frameWidth, height + frameHeight));
  }

  private static int pixels(RemoteWebDriver browser, String which) {
    Object pixels = browser.executeScript("return " + which);
    return ((Number) Objects.requireNonNull(pixels)).intValue();
  }

  @Override
  public void looksAtAll(RemoteWebDriver browser) {
    looksAt(browser, 1280, 900);
  }

  /** Without a chord: after one, a driver may leave the key that was held down. */
  @Override
  public void type(WebElement field, String text) {
    field.clear();
    if (!text.isEmpty()) {
      field.sendKeys(text);
    }
  }

  @Override
  public void define(RemoteWebDriver browser, String script) {
    browser.executeScript(script);
  }

  @Override
  public List<String> complaints(RemoteWebDriver browser) {
    return List.of();
  }
}
