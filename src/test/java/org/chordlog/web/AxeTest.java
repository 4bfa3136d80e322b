package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What makes a page hard to use is found where it is put into one. */
final class AxeTest extends BrowserTest {
  @TempDir static Path directory;
  private static Served served;
  private static Visitor visitor;

  @BeforeAll
  static void aPageWithoutFault() throws Exception {
    served = new Served(directory.resolve("data"));
    visitor = new Visitor(served, browser, "Greta");
    load();
    visitor.findsNothingGrave();
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @AfterEach
  void again() throws Exception {
    load();
  }

  private static void load() throws Exception {
    visitor.go("/machines.html");
    visitor.find("#machines *");
  }

  private static String found() {
    return String.valueOf(assertThrows(AssertionError.class, visitor::findsNothingGrave));
  }

  private static void finds(String... parts) {
    String found = found();
    for (String part : parts) {
      assertTrue(found.contains(part), part + " is not in " + found);
    }
  }

  private static void put(String html) {
    browser.executeScript("document.querySelector('main').innerHTML += arguments[0]", html);
  }

  @Test
  void aPictureWithoutWordsAFieldWithoutALabelAndAHeadingThatIsLeftOut() {
    put("<img src=\"/parts/mark.svg\"><input name=\"depth\"><h5>Roller</h5>");
    finds(
        "image-alt <img src=\"/parts/mark.svg\">",
        "label <input name=\"depth\">",
        "heading-order <h5>Roller</h5>");
  }

  /** By the rules of a sheet, since the service allows no style in a page's text. */
  private static void putPale(String rule) {
    put("<p class=\"pale\">Good</p>");
    browser.executeScript("document.styleSheets[0].insertRule(arguments[0])", rule);
  }

  @Test
  void letteringThatIsTooPaleInTheLight() {
    putPale("[data-theme='light'] p.pale {color: #ccc; background: #fff}");
    finds("light ", "color-contrast <p class=\"pale\">");
  }

  @Test
  void letteringThatIsTooPaleInTheDarkAlone() {
    putPale("[data-theme='dark'] p.pale {color: #333; background: #222}");
    finds("dark ", "color-contrast <p class=\"pale\">");
  }

  /** One cell that differs by its colour alone, and cells whose row has another ground. */
  @Test
  void whatIsTooPaleAmongMuchThatIsAlike() {
    put("<table>" + "<tr><td>1800 mm</td><td>Good</td></tr>".repeat(40) + "</table>");
    for (String rule :
        List.of(
            "main table tr {background: #fff; color: #000}",
            "main table tr:nth-child(30) td:last-child {color: #ccc}",
            "main table tr:nth-child(10) {background: #111}")) {
      browser.executeScript("document.styleSheets[0].insertRule(arguments[0])", rule);
    }
    finds("color-contrast <td>1800 mm</td>, <td>Good</td>, <td>Good</td>");
  }

  /** Each would be alike, were it not for what it lies on. */
  @Test
  void whatIsPlacedFreelyIsJudgedEachByItself() {
    put(
        "<div class=\"ground\">"
            + "<p class=\"placed\">Good</p>".repeat(9)
            + "<div class=\"dark\"></div></div>");
    List<String> rules =
        List.of(
            "main .ground {position: relative; height: 400px; background: #fff; color: #000}",
            "main .dark {position: absolute; top: 240px; height: 40px; width: 400px;"
                + " background: #111; z-index: 0}",
            "main .placed {position: absolute; margin: 0; z-index: 1}");
    rules.forEach(
        each -> browser.executeScript("document.styleSheets[0].insertRule(arguments[0])", each));
    browser.executeScript(
        "document.querySelectorAll('.placed').forEach((each, i) => each.style.top = i * 40 + 'px')");
    finds("color-contrast <p class=\"placed\" style=\"top: 240px;\">Good</p>");
  }

  /** What is still fading in is judged as it will be. */
  @Test
  void whatMovesIsJudgedAtItsEnd() {
    putPale("p.pale {color: #000; background: #fff}");
    browser.executeScript(
        "document.querySelector('.pale').animate([{color: '#fff'}, {color: '#000'}], 1e6)");
    visitor.findsNothingGrave();
  }
}
