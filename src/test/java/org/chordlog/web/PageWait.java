package org.chordlog.web;

import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * Waits within the page of a browser, which looks every 20 ms at itself: a question from outside
 * takes 10 ms of processor time of test, driver and browser together, so asking again and again
 * costs more than what is waited for. Bodies of functions get what was {@code given} to them.
 */
record PageWait(RemoteWebDriver page) {
  private static final long LONGEST_LOOK_MILLIS = 1000;

  private static final String BEFORE =
      """
      const [millis, ...given] = arguments;
      const done = given.pop();
      const end = performance.now() + millis;
      const visible = (each) =>
        each.checkVisibility({ opacityProperty: true, visibilityProperty: true })
          && [...each.getClientRects()].some(({ width, height }) => width > 0 && height > 0);
      const byPath = (path) => {
        const all = document.evaluate(path, document, null, XPathResult.ORDERED_NODE_SNAPSHOT_TYPE);
        return Array.from({ length: all.snapshotLength }, (_, i) => all.snapshotItem(i));
      };
      const found = () => {
      """;

  private static final String AFTER =
      """
      };
      const look = () => {
        const it = found();
        if (it) done(it);
        else if (performance.now() >= end) done(null);
        else setTimeout(look, 20);
      };
      look();
      """;

  /**
   * What the function answers, once that is something; {@code instead}: what there is till then.
   */
  Object found(String body, Callable<?> instead, Object... given) throws Exception {
    return Await.found(() -> look(LONGEST_LOOK_MILLIS, body, given), instead);
  }

  /** What the function answers now. */
  Optional<Object> now(String body, Object... given) {
    return look(0, body, given);
  }

  /** Nothing, too, where another page comes meanwhile. */
  private Optional<Object> look(long millis, String body, Object... given) {
    Object[] all = Stream.concat(Stream.of(millis), Stream.of(given)).toArray();
    try {
      return Optional.ofNullable(page.executeAsyncScript(BEFORE + body + AFTER, all));
    } catch (WebDriverException anotherPage) {
      return Optional.empty();
    }
  }
}
