package org.chordlog.notify.channel;

import java.util.List;
import org.chordlog.measure.BadInput;

/**
 * What a mail says: a subject of one line, parts, and the address of a page, where one acts after
 * signing in. Nothing in it acts by being opened, since scanners of mails open every link.
 */
public record Letter(String subject, List<Part> parts, String link) {
  /** A text under a heading; the heading may be empty. Lines of the text are kept. */
  public record Part(String heading, String text) {
    public Part {
      heading = oneLine("heading", heading);
      text.lines().forEach(line -> oneLine("text", line));
    }
  }

  public Letter {
    oneLine("subject", subject);
    oneLine("link", link);
    parts = List.copyOf(parts);
  }

  private static String oneLine(String field, String text) {
    if (text.chars().anyMatch(Character::isISOControl)) {
      throw new BadInput(field, "", "has a control character", "text of one line");
    }
    return text;
  }

  /** The text with a blank in place of each control character, for names that others gave. */
  public static String plain(String text) {
    return text.replaceAll("\\p{Cntrl}", " ");
  }
}
