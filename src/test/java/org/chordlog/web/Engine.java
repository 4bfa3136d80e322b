package org.chordlog.web;

import java.util.List;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.remote.RemoteWebDriver;

/** What the driver of a kind of browser can do in its own way. */
interface Engine {
  static Engine of(RemoteWebDriver browser) {
    return browser instanceof ChromeDriver ? new Blink() : new OtherEngine();
  }

  /** False where only another browser is as new. */
  boolean forgets(RemoteWebDriver browser);

  /** Forgets what pages of that origin have stored, and who is signed in. */
  void forget(RemoteWebDriver browser, String origin);

  /** Is signed in nowhere, or not at the service of the page that is open. */
  void signOut(RemoteWebDriver browser);

  /** Pages are shown as on a screen of that size, px, from now on. */
  void looksAt(RemoteWebDriver browser, int width, int height);

  /** Pages are shown in the whole window again. */
  void looksAtAll(RemoteWebDriver browser);

  /** Types into a field instead of what was there. */
  void type(WebElement field, String text);

  /** Defines what a script defines, whatever scripts the page allows. */
  void define(RemoteWebDriver browser, String script);

  /** What the browser complained of on its console since it was last asked. */
  List<String> complaints(RemoteWebDriver browser);
}
