package org.chordlog.decode;

import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.measure.BadInput;

/** Bytes as readable text, one character a byte, and back. */
public final class Escapes {
  private static final Pattern ESCAPE = Pattern.compile("\\\\(x[0-9A-Fa-f]{2}|.?)");

  private Escapes() {}

  /** As one line, with what can't be printed as an escape. */
  public static String show(String bytes) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < bytes.length(); i++) {
      char c = bytes.charAt(i);
      switch (c) {
        case '\r' -> text.append("\\r");
        case '\n' -> text.append("\\n");
        case '\\' -> text.append("\\\\");
        default -> text.append(c >= ' ' && c < 0x7F ? String.valueOf(c) : hex(c));
      }
    }
    return text.toString();
  }

  private static String hex(char c) {
    return String.format(Locale.ROOT, "\\x%02X", (int) c);
  }

  /**
   * Bytes of a text with the escapes \\r, \\n, \\\\ and \\xHH; {@code field} is named where there
   * is another.
   */
  public static String read(String field, String text) {
    return ESCAPE
        .matcher(text)
        .replaceAll(found -> Matcher.quoteReplacement(byteOf(field, found, text)));
  }

  private static String byteOf(String field, MatchResult found, String text) {
    String kind = found.group(1);
    return switch (kind) {
      case "r" -> "\r";
      case "n" -> "\n";
      case "\\" -> "\\";
      default -> {
        if (kind.length() != 3) {
          throw new BadInput(field, text, "has an unknown escape", "\\r, \\n, \\\\ or \\xHH");
        }
        yield String.valueOf((char) Integer.parseInt(kind.substring(1), 16));
      }
    };
  }
}
