package org.chordlog.web;

import java.util.Objects;
import org.chordlog.Await;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A reader's own style sets letters, words and lines apart (WCAG 2.2, 1.4.12). */
final class SpacedLettersTest extends ShopTest {
  private static final String APART =
      """
      const style = new CSSStyleSheet();
      style.replaceSync(`* {line-height: 1.5 !important; letter-spacing: 0.12em !important;
        word-spacing: 0.16em !important} p {margin-bottom: 2em !important}`);
      document.adoptedStyleSheets = [style];
      """;

  private static final String WIDER =
      "return document.querySelector('.instrument').style.getPropertyValue('--wider')";

  /**
   * Texts of the instrument that lie on one another or where no one can scroll to, by their
   * letters.
   */
  private static final String FAULTS =
      """
      const dial = document.querySelector('.dial');
      const scrolled = dial.parentElement;
      const {top: begin, right: edge} = scrolled.getBoundingClientRect();
      const all = getComputedStyle(scrolled).overflowY === 'auto';
      const end = begin + (all ? scrolled.scrollHeight : scrolled.clientHeight);
      const walk = document.createTreeWalker(dial, NodeFilter.SHOW_TEXT);
      const lines = [];
      for (let text = walk.nextNode(); text; text = walk.nextNode()) {
        if (text.parentElement.closest('svg')) continue;
        if (!text.parentElement.checkVisibility({visibilityProperty: true})) continue;
        const range = document.createRange();
        range.selectNodeContents(text);
        for (const {left, right, top, bottom, height, width} of range.getClientRects()) {
          const inset = 0.16 * height;
          if (width > 2) lines.push({of: text.data, left, right, top: top + inset, bottom: bottom - inset});
        }
      }
      const beyond = ({right, bottom}) => right > edge + 1 || bottom > end + 2;
      const faults = lines.filter(beyond).map(({of}) => of + ' is beyond the edge');
      lines.forEach((a, i) => lines.slice(i + 1).forEach((b) => {
        const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (wide > 1 && high > 1) faults.push(a.of + ' lies on ' + b.of);
      }));
      return faults.join('; ');
      """;

  @ParameterizedTest
  @CsvSource({"1280, 900", "1280, 720", "768, 1024", "390, 844"})
  void theFiguresOfTheInstrumentKeepTheirPlaces(int width, int height) throws Exception {
    shop.looksAt(width, height);
    shop.go("/station.html?station=A");
    shop.sees(".word", "Good");
    shop.page.executeScript(APART);
    Await.until(() -> run(WIDER).equals("1.24"), () -> run(WIDER));
    Await.until(() -> run(FAULTS).isEmpty(), () -> run(FAULTS));
  }

  private static String run(String script) {
    return Objects.requireNonNull((String) shop.page.executeScript(script));
  }
}
