package org.chordlog.web.event;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.measure.BadInput;

/**
 * The last reading that a listener heard of, and the epoch of the store in which it had that id;
 * the epoch is empty where a program names the id alone.
 */
public record EventId(long reading, String epoch) {
  public static final EventId NONE = new EventId(0, "");
  private static final Pattern TEXT = Pattern.compile("([0-9]{1,19})(?:-([0-9a-z]{1,36}))?");

  /** Reads {@code 17-3f2a9c1e} or {@code 17}; {@link BadInput} names the field. */
  public static EventId read(String field, String text) {
    Matcher matcher = TEXT.matcher(text.strip());
    try {
      if (matcher.matches()) {
        String epoch = matcher.group(2);
        return new EventId(Long.parseLong(matcher.group(1)), epoch == null ? "" : epoch);
      }
    } catch (NumberFormatException e) {
      // refused below
    }
    throw new BadInput(field, text, "is not an event id", "an id sent before, as 17-3f2a9c1e");
  }

  String text() {
    return reading + "-" + epoch;
  }

  /** Whether the reading of that id is still the one that was heard of. */
  boolean in(String present) {
    return epoch.isEmpty() || epoch.equals(present);
  }
}
