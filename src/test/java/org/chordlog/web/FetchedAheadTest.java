package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a page needs is named in its head, so that the browser fetches all of it at once. */
final class FetchedAheadTest extends BrowserTest {
  @TempDir static Path directory;
  private static Served served;
  private static Visitor visitor;

  @BeforeAll
  static void open() {
    served = new Served(directory.resolve("data"));
    visitor = new Visitor(served, browser, "tester");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  /** What the browser fetches for a page's module on a document that names nothing ahead. */
  @Test
  void everyModuleThatThePageNeedsIsNamedAheadAndNoOther() throws Exception {
    for (String page : PagesTest.pages()) {
      visitor.go("/" + page);
      Set<String> named = strings(Objects.requireNonNull(browser.executeScript(NAMED)));
      Object module = browser.executeScript(MODULE);
      visitor.go("/health");
      Set<String> fetched =
          strings(Objects.requireNonNull(browser.executeAsyncScript(FETCHED, module)));
      assertTrue(fetched.remove(module) && fetched.size() > 5, page + " fetched " + fetched);
      assertEquals(fetched, named, page);
    }
  }

  /** Lines break otherwise in another font: it is not to come only when a style asks for it. */
  @ParameterizedTest
  @CsvSource({"station.html?station=A", "help/stations"})
  void fontsAreFetchedAheadAndOnce(String page) {
    visitor.go("/" + page);
    String fonts = "RobotoCondensed-Bold.ttf by link, RobotoCondensed-Regular.ttf by link";
    assertEquals(fonts, browser.executeAsyncScript(FONTS));
  }

  private static final String FONTS =
      "const done = arguments[0]; document.fonts.ready.then(() => done(performance"
          + ".getEntriesByType('resource').filter(each => each.name.includes('/fonts/'))"
          + ".map(each => `${each.name.split('/').at(-1)} by ${each.initiatorType}`)"
          + ".sort().join(', ')));";

  private static final String NAMED =
      "return [...document.querySelectorAll('link[rel=modulepreload]')].map(each => each.href)";

  private static final String MODULE = "return document.querySelector('script[type=module]').src";

  /** The module fails to run there, after all that it imports has been fetched. */
  private static final String FETCHED =
      "const [module, done] = arguments; import(module).catch(() => {}).then(() => done("
          + "performance.getEntriesByType('resource').map(each => each.name)"
          + ".filter(each => each.endsWith('.js'))))";

  private static Set<String> strings(Object list) {
    Set<String> all = new TreeSet<>();
    ((List<?>) list).forEach(each -> all.add(String.valueOf(each)));
    return all;
  }
}
