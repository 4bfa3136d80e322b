package org.chordlog.web;

import static java.util.Objects.requireNonNull;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.chordlog.Await;
import org.chordlog.account.Role;
import org.chordlog.harness.Directories;
import org.openqa.selenium.Keys;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * How long a screen that people share takes from the first key of a badge, or of a PIN, until the
 * name is drawn; in a real browser, with the service in the same process. Argument: how often (30).
 */
final class PersonChangeLoad {
  /** From the first key to the frame in which the name is there; and of the request alone. */
  private static final String WATCH =
      """
      window.began = 0; window.took = 0; performance.clearResourceTimings();
      if (!window.watching) {
        window.watching = true;
        addEventListener('keydown', () => { window.began ||= performance.now(); }, { capture: true });
        new MutationObserver(() => {
          if (!window.began || window.took) return;
          if (document.getElementById('signed-in')?.textContent !== 'Ann') return;
          requestAnimationFrame(() => { window.took ||= performance.now() - window.began; });
        }).observe(document.body, { childList: true, subtree: true, characterData: true });
      }
      """;

  private static final String REQUEST =
      "return performance.getEntriesByType('resource')"
          + ".filter((e) => e.name.endsWith('/api/session/person')).at(-1)?.duration ?? 0";

  private final ChromeDriver browser;
  private final Visitor visitor;

  private PersonChangeLoad(ChromeDriver browser, URI address) {
    this.browser = browser;
    visitor = new Visitor(address, browser, "");
  }

  public static void main(String[] arguments) throws Exception {
    int times = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 30;
    Path folder = Files.createTempDirectory("person-change");
    try (Served served = ShopPeople.served(folder.resolve("data"))) {
      people(served);
      ChromeDriver browser = Browser.open(folder.resolve("profile"), 768, 1_024);
      try {
        URI address = URI.create("http://localhost:" + served.web.port());
        PersonChangeLoad load = new PersonChangeLoad(browser, address);
        load.share();
        tell("badge", load.times(times, true));
        tell("PIN", load.times(times, false));
      } finally {
        browser.quit();
      }
    } finally {
      Directories.delete(folder);
    }
  }

  private static void people(Served served) {
    ShopPeople people = new ShopPeople(served);
    var unusedBoss = people.signedIn("Boss", Role.ADMINISTRATOR);
    var unusedAnn = people.signedIn("Ann", Role.OPERATOR);
    long ann = served.web.entrance().people().active("Ann").orElseThrow().id();
    var unusedBadge = served.web.entrance().people().badge(ann, "0004711042", "a test");
    var unusedPin = served.web.entrance().people().pin(ann, "271828", "a test");
  }

  private void share() throws Exception {
    visitor.go("/accounts.html");
    visitor.find("[name='name']").sendKeys("Boss");
    visitor.find("[name='password']").sendKeys(ShopPeople.PASSWORD + Keys.ENTER);
    visitor.press("Share this screen");
    visitor.find("dialog [name='name']").sendKeys("Tablet 1" + Keys.ENTER);
    visitor.sees("#signed-in", "Nobody");
  }

  /** Milliseconds from key to name, and of the request. */
  private double[][] times(int times, boolean badge) throws Exception {
    double[][] took = new double[2][times];
    for (int i = 0; i < times; i++) {
      visitor.click("#change-person");
      requireNonNull(visitor.find("dialog [name='badge']"));
      browser.executeScript(WATCH);
      if (badge) {
        browser.switchTo().activeElement().sendKeys("0004711042" + Keys.ENTER);
      } else {
        visitor.find("dialog option[value='Ann']").click();
        visitor.find("dialog [name='pin']").sendKeys("271828" + Keys.ENTER);
      }
      Await.until(() -> number("return window.took") > 0, () -> visitor.text("dialog"));
      took[0][i] = number("return window.took");
      took[1][i] = number(REQUEST);
      visitor.click("#sign-out");
      visitor.sees("#signed-in", "Nobody");
    }
    return took;
  }

  private double number(String script) {
    return ((Number) requireNonNull(browser.executeScript(script))).doubleValue();
  }

  private static void tell(String what, double[][] millis) {
    Arrays.sort(millis[0]);
    Arrays.sort(millis[1]);
    int last = millis[0].length - 1;
    System.out.printf(
        Locale.ROOT,
        "%s: first key to name %.0f ms, worst %.0f; of it the request %.0f ms, worst %.0f (%d times)%n",
        what,
        millis[0][last / 2],
        millis[0][last],
        millis[1][last / 2],
        millis[1][last],
        last + 1);
  }
}
