package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Instant;
import org.chordlog.Await;
import org.chordlog.shop.Shop;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.Times;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.remote.RemoteWebDriver;

/** A visitor of the invented shop: real service, store, and HTTP. */
final class ShopPages extends Visitor {
  final Served served;

  ShopPages(Path directory, RemoteWebDriver browser) {
    this(new Served(filled(directory.resolve("data"))), browser);
  }

  private ShopPages(Served served, RemoteWebDriver browser) {
    super(served, browser, "quality");
    this.served = served;
  }

  static Path filled(Path data) {
    try (Store store = Stores.open(data)) {
      Shop.open(store, Times.micros(Instant.now()), "A").usual();
    }
    return data;
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
    sees("h1", name);
    Await.until(() -> count("section[aria-label='Control charts'] .picture svg") == 1);
  }

  void fillNamed(String name, String text) throws Exception {
    WebElement field = find("[name='" + name + "']");
    field.clear();
    field.sendKeys(text);
  }

  void choose(String name, String value) throws Exception {
    page.executeScript(
        "const s = arguments[0]; s.value = arguments[1];"
            + "s.dispatchEvent(new Event('change', {bubbles: true}))",
        find("[name='" + name + "']"),
        value);
  }

  /** The browser notes each refused request on the console; here that was meant. */
  void refusalsWereMeant() {
    Engine.of(page).complaints(page).stream()
        .filter(
            each ->
                !each.matches("(?s).*status of 4(0|12).*")
                    && !each.matches("(?s).*(There is|names) no .*"))
        .forEach(each -> assertEquals("", each));
  }

  void close() {
    served.close();
  }
}
