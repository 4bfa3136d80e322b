package org.chordlog.notify.mail;

import org.chordlog.notify.channel.Letter;

/** A letter as plain text, and as a small HTML document without pictures, scripts or styles. */
final class LetterText {
  private LetterText() {}

  static String plain(Letter letter) {
    StringBuilder text = new StringBuilder();
    for (Letter.Part part : letter.parts()) {
      if (!part.heading().isEmpty()) {
        text.append(part.heading()).append(":\n");
      }
      text.append(part.text().strip()).append("\n\n");
    }
    return text.append(letter.link()).append('\n').toString();
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
