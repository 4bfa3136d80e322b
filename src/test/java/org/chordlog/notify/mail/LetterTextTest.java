package org.chordlog.notify.mail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.notify.channel.Letter;
import org.junit.jupiter.api.Test;

final class LetterTextTest {
  private static String plain(String heading, String text) {
    String link = "https://chordlog.example/" + "x".repeat(80);
    return LetterText.plain(new Letter("s", List.of(new Letter.Part(heading, text)), link));
  }

  @Test
  void linesAreAtMost78LongAndNoWordOfThemIsLost() {
    String text = "measure and adjust only with the rollers stopped; ".repeat(9).strip();
    String plain = plain("What to do", text);
    List<String> lines = plain.lines().toList();
    assertEquals("What to do:", lines.get(0));
    for (String line : lines.subList(0, lines.size() - 1)) {
      assertTrue(line.length() <= 78, line);
    }
    assertTrue(lines.get(1).length() > 70, plain);
    assertTrue(plain.replace('\n', ' ').contains(text), plain);
    assertTrue(lines.get(lines.size() - 1).endsWith("x".repeat(80)), plain);
  }

  @Test
  void linesOfAListAreKeptAndIndented() {
    String plain = plain("", "- one\n- " + "two ".repeat(30).strip());
    List<String> lines = plain.lines().toList();
    assertEquals("- one", lines.get(0));
    assertTrue(lines.get(1).startsWith("- two two"), plain);
    assertTrue(lines.get(2).startsWith("  two"), plain);
  }
}
