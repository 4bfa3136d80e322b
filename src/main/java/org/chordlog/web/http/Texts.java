package org.chordlog.web.http;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonStreamContext;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import java.io.IOException;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * The bounds of every text that comes in: its length, and no character that is not seen. Names have
 * up to {@value #LONGEST} characters, sentences up to {@value #LONGEST_SENTENCE}; a file sent
 * within a body is bounded by the size of the request and by the checks of its cells.
 */
public final class Texts {
  static final int LONGEST = 200;
  static final int LONGEST_SENTENCE = 1_000;
  private static final Set<String> SENTENCES =
      Set.of("note", "reason", "why", "cause", "action", "request");
  private static final Set<String> FILES = Set.of("csv");

  /**
   * Settings of a station, its profiles among them, which the reader of the station file checks.
   */
  private static final Set<String> SETTINGS = Set.of("station", "profile", "profiles");

  private Texts() {}

  /** {@link BadInput} for a text that a field of that name may not hold. */
  public static void require(String field, String text) {
    int most = SENTENCES.contains(field) ? LONGEST_SENTENCE : LONGEST;
    if (text.length() > most) {
      throw new BadInput(
          field,
          text.substring(0, LONGEST) + " …",
          "is too long",
          "at most " + most + " characters");
    }
    if (!seen(text, SENTENCES.contains(field))) {
      throw new BadInput(field, "", "has control characters", "letters, digits, signs and blanks");
    }
  }

  /** Whether all its characters are seen as written; {@code lines}: or end a line. */
  static boolean seen(String text, boolean lines) {
    return text.codePoints().allMatch(c -> seen(c) || (lines && (c == '\n' || c == '\t')));
  }

  /** Control characters, line separators and those that turn the direction of what follows. */
  private static boolean seen(int c) {
    return !Character.isISOControl(c)
        && c != 0x2028
        && c != 0x2029
        && !(c >= 0x202a && c <= 0x202e)
        && !(c >= 0x2066 && c <= 0x2069);
  }

  /** Reads every text of a request's body. */
  static final class Reader extends StdScalarDeserializer<String> {
    private static final long serialVersionUID = 1L;

    Reader() {
      super(String.class);
    }

    @Override
    public @Nullable String deserialize(JsonParser from, DeserializationContext around)
        throws IOException {
      if (!from.currentToken().isScalarValue() || from.currentToken().isNumeric()) {
        return (String) around.handleUnexpectedToken(String.class, from);
      }
      String text = from.getText();
      JsonStreamContext place = from.getParsingContext();
      String field = name(place);
      if (!FILES.contains(field) && !within(place, SETTINGS)) {
        require(field, text.replace("\r\n", "\n"));
      }
      return text;
    }

    /** Of the field, or of the list that it is in. */
    private static String name(JsonStreamContext place) {
      for (JsonStreamContext at = place; at != null; at = at.getParent()) {
        if (at.getCurrentName() != null) {
          return at.getCurrentName();
        }
      }
      return "body";
    }

    private static boolean within(JsonStreamContext place, Set<String> outermost) {
      JsonStreamContext at = place;
      while (at.getParent() != null && !at.getParent().inRoot()) {
        at = at.getParent();
      }
      String name = at.getCurrentName();
      return at != place && name != null && outermost.contains(name);
    }
  }
}
