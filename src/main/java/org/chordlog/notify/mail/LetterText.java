package org.chordlog.notify.mail;

import org.chordlog.notify.channel.Letter;

/** A letter as plain text, and as a small HTML document without pictures, scripts or styles. */
final class LetterText {
  /** As long as lines of a mail should be at most, by RFC 5322, 2.1.1. */
  static final int COLUMNS = 78;

  private LetterText() {}

  /** In lines of at most {@link #COLUMNS}, but for words and addresses that are longer. */
  static String plain(Letter letter) {
    StringBuilder text = new StringBuilder();
    for (Letter.Part part : letter.parts()) {
      if (!part.heading().isEmpty()) {
        wrap(part.heading() + ":", text);
      }
      part.text().strip().lines().forEach(line -> wrap(line, text));
      text.append('\n');
    }
    return text.append(letter.link()).append('\n').toString();
  }

  /** Broken at blanks; the lines of a list item after its first one are indented. */
  private static void wrap(String line, StringBuilder text) {
    String indent = line.startsWith("- ") ? "  " : "";
    int column = 0;
    for (String word : line.strip().split(" +", -1)) {
      boolean breaks = column > 0 && column + 1 + word.length() > COLUMNS;
      String before = breaks ? "\n" + indent : column > 0 ? " " : "";
      text.append(before).append(word);
      column = (breaks ? indent.length() : column + before.length()) + word.length();
    }
    text.append('\n');
  }

  static String html(Letter letter) {
    StringBuilder html = new StringBuilder("<!DOCTYPE html><html><body>\n");
    for (Letter.Part part : letter.parts()) {
      html.append("<p>");
      if (!part.heading().isEmpty()) {
        html.append("<b>").append(escaped(part.heading())).append("</b><br>");
      }
      String lines = escaped(part.text().strip()).replace("\n", "<br>\n");
      html.append(lines).append("</p>\n");
    }
    String link = escaped(letter.link());
    return html.append("<p><a href=\"" + link + "\">" + link + "</a></p>\n</body></html>\n")
        .toString();
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }
}
