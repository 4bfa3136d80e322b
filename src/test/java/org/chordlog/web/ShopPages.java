package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.logging.Level;
import org.chordlog.Await;
import org.chordlog.shop.Shop;
import org.chordlog.store.sqlite.SqliteStore;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.logging.LogType;

/** The pages of the invented shop in a real browser: real service, store, and HTTP. */
final class ShopPages implements AutoCloseable {
  private static final Set<String> GRAVE = Set.of("serious", "critical");

  final Served served;
  final ChromeDriver page;

  ShopPages(Path directory) {
    try (SqliteStore store = SqliteStore.open(directory.resolve("data"))) {
      Shop.open(store, Times.micros(Instant.now()), "A").usual();
    }
    served = new Served(directory.resolve("data"));
    page = Browser.open(directory.resolve("profile"), 1280, 900);
    page.get(served.uri("/jobs.html").toString());
    page.executeScript("localStorage.setItem('name', 'quality')");
  }

  void go(String path) {
    page.get(served.uri(path).toString());
  }

  long jobId(String name) {
    return served.store.jobs().list(Long.MAX_VALUE, 100).stream()
        .filter(job -> job.name().equals(name))
        .findFirst()
        .orElseThrow()
        .id();
  }

  void goToJob(String name) throws Exception {
    go("/job.html?job=" + jobId(name));
    see("h1", name);
    Await.until(() -> count(".picture svg") >= 1);
  }

  int count(String selector) {
    return page.findElements(By.cssSelector(selector)).size();
  }

  /** What all that match the selector say, looked at in one moment. */
  String text(String selector) {
    return String.valueOf(
        page.executeScript(
            "return [...document.querySelectorAll(arguments[0])]"
                + ".map(each => each.textContent).join('\\n')",
            selector));
  }

  /** Waits until something that matches the selector says that. */
  void see(String selector, String words) throws Exception {
    Await.until(() -> text(selector).contains(words));
  }

  WebElement find(String selector) {
    return page.findElement(By.cssSelector(selector));
  }

  WebElement button(String words) {
    Object found =
        page.executeScript(
            "return [...document.querySelectorAll('button')]"
                + ".find(each => each.textContent === arguments[0]) ?? null",
            words);
    if (found instanceof WebElement button) {
      return button;
    }
    throw new AssertionError("no button " + words);
  }

  void click(WebElement element) {
    page.executeScript("arguments[0].scrollIntoView({block: 'center'})", element);
    element.click();
  }

  void fill(String name, String text) {
    WebElement field = find("[name='" + name + "']");
    field.clear();
    field.sendKeys(text);
  }

  void choose(String name, String value) {
    page.executeScript(
        "const s = document.querySelector(arguments[0]); s.value = arguments[1];"
            + "s.dispatchEvent(new Event('change', {bubbles: true}))",
        "[name='" + name + "']",
        value);
  }

  /** No finding of serious or higher, in light and in dark. */
  void accessible() {
    for (String theme : List.of("light", "dark")) {
      page.executeScript("document.documentElement.dataset.theme = arguments[0]", theme);
      List<String> found =
          new AxeBuilder()
                  .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"))
                  .analyze(page)
                  .getViolations()
                  .stream()
                  .filter(rule -> GRAVE.contains(rule.getImpact()))
                  .map(ShopPages::said)
                  .toList();
      assertEquals(List.of(), found, theme + " " + page.getCurrentUrl());
    }
  }

  private static String said(Rule rule) {
    return rule.getId()
        + " "
        + rule.getNodes().stream().map(node -> node.getTarget() + " " + node.getHtml()).toList();
  }

  /** The browser notes each refused request on the console; here that was meant. */
  void refusalsWereMeant() {
    page.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(Object::toString)
        .filter(each -> !each.contains("status of 40") && !each.contains("There is no such"))
        .forEach(each -> assertEquals("", each));
  }

  /** Nothing on the console, nothing asked for elsewhere. */
  void clean() {
    assertEquals(
        List.of(),
        page.manage().logs().get(LogType.BROWSER).getAll().stream()
            .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
            .map(Object::toString)
            .toList());
    @Nullable Object elsewhere =
        page.executeScript(
            "return performance.getEntriesByType('resource').map(e => e.name)"
                + ".filter(n => new URL(n).origin !== location.origin && !n.startsWith('blob:'))");
    assertEquals(List.of(), elsewhere);
  }

  @Override
  public void close() {
    page.quit();
    served.close();
  }
}
