package org.chordlog.web;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * The accessibility checker axe on the page of a browser. Its script is loaded once a page, and
 * describes only what is wrong: a description of all that is right takes most of its time. Of the
 * rest colours take most: of lettering that is drawn alike on grounds that are alike, as in the
 * rows of a long table, the first, the middle and the last are judged.
 */
final class Axe {
  private static final List<String> WCAG =
      List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");
  private static final List<String> GRAVE = List.of("moderate", "serious", "critical");
  private static final String SCRIPT = script();

  /**
   * Alike: of the same element and class, and of the same style in all that its colours come from,
   * and so is all that it stands in. What is placed freely may lie on another ground: each is
   * judged. Axe itself judges neither a single letter nor signs as it judges words, and nothing
   * that is not seen.
   */
  private static final String ALIKE =
      """
      const numbers = new Map(), kinds = new Map();
      const styles = ['color', 'background-color', 'background-image', 'opacity', 'font-size',
        'font-weight', 'text-shadow', '-webkit-text-stroke', 'filter', 'mix-blend-mode', 'clip-path'];
      const number = (text) => numbers.get(text) ?? numbers.set(text, numbers.size).get(text);
      const kind = (element) => {
        if (!element) return { is: 0, free: false };
        if (!kinds.has(element)) {
          const style = getComputedStyle(element), around = kind(element.parentElement);
          const free = around.free || !['static', 'relative'].includes(style.position);
          const off = element.matches(':disabled, [aria-disabled], [inert]');
          const own = [around.is, element.tagName, element.getAttribute('class'), off,
            ...styles.map((each) => style.getPropertyValue(each))].join('|');
          kinds.set(element, { is: number(own), free });
        }
        return kinds.get(element);
      };
      const ownText = (element) => [...element.childNodes]
        .filter((each) => each.nodeType === Node.TEXT_NODE).map((each) => each.data.trim()).join('');
      const judged = () => {
        const lettered = [...document.body.querySelectorAll('*')]
          .filter((each) => ownText(each) || each.matches('input, select, textarea'));
        const alike = Map.groupBy(lettered, (each) => {
          const { is, free } = kind(each), words = /[\\p{L}\\p{N}]{2}/u.test(ownText(each));
          const seen = each.checkVisibility({ opacityProperty: true, visibilityProperty: true });
          return (seen && free) || each.closest('label') ? each : [is, words, seen].join();
        });
        return new Set([...alike.values()]
          .flatMap((all) => [all.at(0), all.at(all.length / 2), all.at(-1)]));
      };
      """;

  /** On a page at rest: animations that end have ended. */
  private static final String RUN =
      ALIKE
          + """
      const [options, grave, done] = arguments;
      document.getAnimations()
        .filter((each) => each.effect.getComputedTiming().endTime !== Infinity)
        .forEach((each) => each.finish());
      const colours = axe._audit.rules.find(({ id }) => id === 'color-contrast');
      colours.anyMatches ??= colours.matches;
      const those = judged();
      colours.matches = (element, ...more) =>
        those.has(element) && colours.anyMatches(element, ...more);
      axe.run(document, {...options, resultTypes: ['violations']}).then(
        ({violations}) => done(violations
          .filter(({impact}) => grave.includes(impact))
          .map(({id, nodes}) => id + ' ' + nodes.map(({html}) => html).join(', '))),
        (fault) => done(['axe failed: ' + fault]));
      """;

  private Axe() {}

  /** By every rule of WCAG 2.2 A and AA, and by best practice. */
  static List<?> findings(RemoteWebDriver page) {
    return findings(page, Map.of("runOnly", Map.of("type", "tag", "values", WCAG)));
  }

  /** Only colours that are too close to each other. */
  static List<?> findingsOfColours(RemoteWebDriver page) {
    List<String> rules = List.of("color-contrast");
    return findings(page, Map.of("runOnly", Map.of("type", "rule", "values", rules)));
  }

  private static List<?> findings(RemoteWebDriver page, Map<String, ?> options) {
    if (!Boolean.TRUE.equals(page.executeScript("return 'axe' in window"))) {
      Engine.of(page).define(page, SCRIPT);
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
