package org.chordlog.forward;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.chordlog.store.FeedRow;
import org.jspecify.annotations.Nullable;

/**
 * Rows in the text format of PostgreSQL's COPY (documentation of COPY, "Text Format"). Doubles are
 * written with as many digits as make them the same double again. A NUL character, which PostgreSQL
 * has no place for, becomes the replacement character.
 */
final class CopyText {
  private static final char[] HEX = "0123456789abcdef".toCharArray();

  private CopyText() {}

  /** The values, then the number of the change where {@code facts}. */
  static byte[] of(List<FeedRow> rows, boolean facts) {
    StringBuilder text = new StringBuilder(rows.size() * 400);
    for (FeedRow row : rows) {
      add(text, row.values());
      if (facts) {
        text.append('\t').append(row.revision());
      }
      text.append('\n');
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void add(StringBuilder to, List<@Nullable Object> values) {
    for (int i = 0; i < values.size(); i++) {
      if (i > 0) {
        to.append('\t');
      }
      add(to, values.get(i));
    }
  }

  private static void add(StringBuilder to, @Nullable Object value) {
    if (value == null) {
      to.append("\\N");
    } else if (value instanceof String text) {
      escaped(to, text);
    } else if (value instanceof byte[] bytes) {
      hex(to, bytes);
    } else {
      to.append(value);
    }
  }

  private static void escaped(StringBuilder to, String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '\\' -> to.append("\\\\");
        case '\t' -> to.append("\\t");
        case '\n' -> to.append("\\n");
        case '\r' -> to.append("\\r");
        case 0 -> to.append('\ufffd');
        default -> to.append(c);
      }
    }
  }

  /** {@code \x} and two digits a byte; the backslash itself is escaped. */
  private static void hex(StringBuilder to, byte[] bytes) {
    to.append("\\\\x");
    for (byte each : bytes) {
      to.append(HEX[(each >> 4) & 0xf]).append(HEX[each & 0xf]);
    }
  }
}
