package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.net.URI;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.chordlog.Await;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementNotInteractableException;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * A person at a page in a real browser: sees words, presses buttons, fills fields by their label.
 */
class Visitor {
  private static final String NEWEST =
      "const it = byPath(given[0]).filter(visible).at(-1);"
          + "it?.scrollIntoView({ block: 'center' }); return it;";
  private static final String FIRST =
      "const it = [...document.querySelectorAll(given[0])].find(visible);"
          + "it?.scrollIntoView({ block: 'center' }); return it;";

  final RemoteWebDriver page;
  private final PageWait wait;
  private final URI address;

  /**
   * Known by that name on this device; without one when it is empty. The browser may have been used
   * before: each service has an address, and so a memory in the browser, of its own.
   */
  Visitor(Served served, RemoteWebDriver browser, String name) {
    this(served.uri("/"), browser, name);
  }

  /** The same at a service of that address, which may have a path. */
  Visitor(URI address, RemoteWebDriver browser, String name) {
    this.address = URI.create(address + (address.getPath().endsWith("/") ? "" : "/"));
    page = browser;
    wait = new PageWait(page);
    Engine.of(page).looksAtAll(page);
    go("/health"); // of the same origin, and shown at a fifth of what a page costs
    console();
    page.executeScript("if (arguments[0]) localStorage.setItem('name', arguments[0])", name);
  }

  /** From the top of the service. */
  void go(String path) {
    page.get(address.resolve(path.substring(1)).toString());
  }

  /** Waits until something that matches the selector says that; a space that does not break too. */
  void sees(String selector, String words) throws Exception {
    var unused =
        wait.found(
            "return [...document.querySelectorAll(given[0])].map((e) => e.textContent).join('\\n')"
                + ".replaceAll('\\u00a0', ' ').includes(given[1])",
            () -> selector + " says '" + text(selector) + "', not '" + words + "'",
            selector,
            words);
  }

  /** Text of all that matches, as it is now, with plain spaces; empty while it changes. */
  String text(String selector) {
    Object text =
        page.executeScript(
            "return [...document.querySelectorAll(arguments[0])].map(e => e.textContent).join('\\n')"
                + ".replaceAll('\\u00a0', ' ')",
            selector);
    return String.valueOf(text);
  }

  int count(String selector) {
    return page.findElements(By.cssSelector(selector)).size();
  }

  /** Waits until so many match. */
  void counts(String selector, int number) throws Exception {
    var unused =
        wait.found(
            "return document.querySelectorAll(given[0]).length === given[1]",
            () -> count(selector) + " of " + selector + " instead of " + number,
            selector,
            number);
  }

  /** The first that matches, once it is there. */
  WebElement find(String selector) throws Exception {
    return (WebElement)
        wait.found("return document.querySelector(given[0])", () -> "no " + selector, selector);
  }

  /** The first that matches and says that, once it is there; cells of a row with spaces between. */
  WebElement first(String selector, String words) throws Exception {
    return (WebElement)
        wait.found(
            "return [...document.querySelectorAll(given[0])]"
                + ".find((e) => (e.innerText + ' ').replace(/\\s+/g, ' ').includes(given[1]))",
            () -> "no " + selector + " says '" + words + "': " + text(selector),
            selector,
            words);
  }

  /** As shown on a screen of that size, px. */
  void looksAt(int width, int height) {
    Engine.of(page).looksAt(page, width, height);
  }

  /** What a script answers with a number. */
  double number(String script, Object... arguments) {
    Object answer = page.executeScript(script, arguments);
    return ((Number) Objects.requireNonNull(answer, script)).doubleValue();
  }

  /** Whether the first that matches stands whole above the lower edge and what is stuck there. */
  boolean inView(String selector, String stuck) {
    return Boolean.TRUE.equals(
        page.executeScript(
            "const at = document.querySelector(arguments[0])?.getBoundingClientRect();"
                + "const foot = document.querySelector(arguments[1])?.getBoundingClientRect().top;"
                + "return scrollY === 0 && !!at && at.width > 0 && at.height > 0 && at.top >= 0"
                + " && at.left >= 0 && at.right <= innerWidth"
                + " && at.bottom <= Math.min(innerHeight, foot ?? innerHeight)",
            selector,
            stuck));
  }

  /** Presses the newest visible button or link with these words. */
  void press(String words) throws Exception {
    clickAt(NEWEST, pathOf(words), "no '" + words + "' to press");
  }

  /** Presses again, as often as it is there, until that is so. */
  void pressUntil(String words, Callable<Boolean> done) throws Exception {
    Await.until(
        () -> done.call() || (clicked(wait.now(NEWEST, pathOf(words))) && done.call()),
        () -> "pressed '" + words + "': '" + text("dialog") + "', '" + text(".note") + "'");
  }

  private static String pathOf(String words) {
    return "//*[self::button or self::a][not(@disabled)][normalize-space(translate(text(),'\u00a0',' '))='"
        + words
        + "' or normalize-space(translate(.,'\u00a0',' '))='"
        + words
        + "']";
  }

  /** Clicks the first visible element that matches. */
  void click(String selector) throws Exception {
    clickAt(FIRST, selector, "no " + selector);
  }

  /** Again where something covers it at first, or a new one takes its place. */
  private void clickAt(String which, String given, String otherwise) throws Exception {
    Await.until(
        () -> clicked(Optional.of(wait.found(which, () -> otherwise, given))), () -> otherwise);
  }

  private static boolean clicked(Optional<Object> element) {
    try {
      element.ifPresent(each -> ((WebElement) each).click());
      return element.isPresent();
    } catch (WebDriverException goneOrCovered) {
      return false;
    }
  }

  /** Types into the field with that label, instead of what was there. */
  void fill(String label, String text) throws Exception {
    Await.until(() -> typed(label, text));
  }

  private boolean typed(String label, String text) throws Exception {
    try {
      Engine.of(page).type(field(label), text);
      return true;
    } catch (StaleElementReferenceException | ElementNotInteractableException changing) {
      return false;
    }
  }

  /** The field with that label in the newest form, once it is there. */
  WebElement field(String label) throws Exception {
    return (WebElement)
        wait.found(
            "return byPath(given[0]).map((each) => document.getElementById(each.htmlFor))"
                + ".filter(Boolean).at(-1)",
            () -> "no field labelled " + label,
            "//label[normalize-space(text())='" + label + "']");
  }

  /**
   * No finding of moderate or higher by axe in light; in dark, where only colours differ, of them.
   */
  void findsNothingGrave() {
    in("light");
    assertEquals(List.of(), Axe.findings(page), "light " + page.getCurrentUrl());
    in("dark");
    assertEquals(List.of(), Axe.findingsOfColours(page), "dark " + page.getCurrentUrl());
  }

  private void in(String theme) {
    page.executeScript("document.documentElement.dataset.theme = arguments[0]", theme);
  }

  /** Nothing on the console, nothing asked for anywhere else. */
  void leavesNothingOnTheConsole() {
    assertEquals(List.of(), console());
    assertEquals(
        List.of(),
        page.executeScript(
            "return performance.getEntriesByType('resource').map(e => e.name)"
                + ".filter(n => new URL(n).origin !== location.origin && !n.startsWith('blob:'))"));
  }

  /**
   * What the browser complains of; that a form was refused (400, 412) is no complaint of the
   * page's.
   */
  private List<String> console() {
    return Engine.of(page).complaints(page).stream()
        .filter(message -> !message.matches("(?s).*status of (400|412).*"))
        .toList();
  }
}
