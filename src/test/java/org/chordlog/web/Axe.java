package org.chordlog.web;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * The accessibility checker axe on the page of a browser. Its script is loaded once a page, and
 * describes only what is wrong: a description of all that is right takes most of its time.
 */
final class Axe {
  private static final List<String> WCAG =
      List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");
  private static final List<String> GRAVE = List.of("moderate", "serious", "critical");
  private static final String SCRIPT = script();

  /** On a page at rest: animations that end have ended. */
  private static final String RUN =
      """
      const [options, grave, done] = arguments;
      document.getAnimations()
        .filter((each) => each.effect.getComputedTiming().endTime !== Infinity)
        .forEach((each) => each.finish());
      axe.run(document, {...options, resultTypes: ['violations']}).then(
        ({violations}) => done(violations
          .filter(({impact}) => grave.includes(impact))
          .map(({id, nodes}) => id + ' ' + nodes.map(({html}) => html).join(', '))),
        (fault) => done(['axe failed: ' + fault]));
      """;

  private Axe() {}

  /** By every rule of WCAG 2.2 A and AA, and by best practice. */
  static List<?> findings(ChromeDriver page) {
    return findings(page, Map.of("runOnly", Map.of("type", "tag", "values", WCAG)));
  }

  /** Only colours that are too close to each other. */
  static List<?> findingsOfColours(ChromeDriver page) {
    List<String> rules = List.of("color-contrast");
    return findings(page, Map.of("runOnly", Map.of("type", "rule", "values", rules)));
  }

  private static List<?> findings(ChromeDriver page, Map<String, ?> options) {
    if (!Boolean.TRUE.equals(page.executeScript("return 'axe' in window"))) {
      page.executeScript(SCRIPT);
    }
    return (List<?>) Objects.requireNonNull(page.executeAsyncScript(RUN, options, GRAVE));
  }

  private static String script() {
    try (InputStream script = AxeBuilder.class.getResourceAsStream("/axe.min.js")) {
      return new String(Objects.requireNonNull(script).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
