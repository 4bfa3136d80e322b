package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody at a page asks for help. */
final class HelpPageTest extends BrowserTest {
  @TempDir Path directory;

  @Test
  void aPageLeadsToWhereItIsExplained() throws Exception {
    try (Served served = new Served(directory.resolve("data"))) {
      Visitor visitor = new Visitor(served, browser, "Greta");
      visitor.go("/gauge.html");
      visitor.press("Help");
      visitor.sees("article", "Zero, masters and checks");
      visitor.findsNothingGrave();
      visitor.press("First steps and troubles");
      visitor.sees("article", "The first ten minutes");
      visitor.looksAt(390, 844);
      Object tooWide =
          visitor.page.executeScript(
              "return document.documentElement.scrollWidth - document.documentElement.clientWidth");
      assertEquals(0L, tooWide);
      Object narrow =
          visitor.page.executeScript(
              "return [...document.querySelectorAll('.help td')].filter((e) => e.offsetWidth < 60)");
      assertEquals(List.of(), narrow, "cells with a few letters a line");
      visitor.findsNothingGrave();
      visitor.leavesNothingOnTheConsole();
    }
  }
}
