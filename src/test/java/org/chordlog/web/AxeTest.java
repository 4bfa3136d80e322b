package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.chordlog.Await;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What makes a page hard to use is found where it is put into one. */
final class AxeTest extends BrowserTest {
  @TempDir static Path directory;
  private static Served served;
  private static Visitor visitor;

  @BeforeAll
  static void serve() {
    served = new Served(directory.resolve("data"));
    visitor = new Visitor(served, browser, "Greta");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @BeforeEach
  void aPageWithoutFault() throws Exception {
    visitor.go("/machines.html");
    Await.until(() -> visitor.count("#machines *") > 0);
    visitor.findsNothingGrave();
  }

  private static String found() {
    return String.valueOf(assertThrows(AssertionError.class, visitor::findsNothingGrave));
  }

  private static void put(String html) {
    browser.executeScript("document.querySelector('main').innerHTML += arguments[0]", html);
  }

  @Test
  void aPictureWithoutWords() {
    put("<img src=\"/parts/mark.svg\">");
    assertTrue(found().contains("image-alt <img src=\"/parts/mark.svg\">"), found());
  }

  @Test
  void aFieldWithoutALabel() {
    put("<input name=\"depth\">");
    assertTrue(found().contains("label <input name=\"depth\">"), found());
  }

  @Test
  void aHeadingThatIsLeftOut() {
    put("<h5>Roller</h5>");
    assertTrue(found().contains("heading-order <h5>Roller</h5>"), found());
  }

  /** By the rules of a sheet, since the service allows no style in a page's text. */
  private static void putPale(String rule) {
    put("<p class=\"pale\">Good</p>");
    browser.executeScript("document.styleSheets[0].insertRule(arguments[0])", rule);
  }

  @Test
  void letteringThatIsTooPaleInTheLight() {
    putPale("[data-theme='light'] p.pale {color: #ccc; background: #fff}");
    assertTrue(found().contains("light "), found());
    assertTrue(found().contains("color-contrast <p class=\"pale\">"), found());
  }

  @Test
  void letteringThatIsTooPaleInTheDarkAlone() {
    putPale("[data-theme='dark'] p.pale {color: #333; background: #222}");
    assertTrue(found().contains("dark "), found());
    assertTrue(found().contains("color-contrast <p class=\"pale\">"), found());
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
