package org.chordlog.notify.settings;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/** Values of the file of alerts, each refused by the name of its key. */
final class KeyValues {
  private static final int LONGEST = 200;

  private KeyValues() {}

  static String required(String key, @Nullable String given) {
    if (given == null || given.isBlank()) {
      throw new BadInput(key, "", "is missing", "a value");
    }
    return oneLine(key, given);
  }

  static String oneLine(String key, String given) {
    if (given.isBlank() || given.length() > LONGEST || given.chars().anyMatch(KeyValues::control)) {
      throw new BadInput(
          key,
          "'" + given.replaceAll("\\p{Cntrl}", "?") + "'",
          "is not a text of one line",
          "1 to " + LONGEST + " characters without line breaks");
    }
    return given;
  }

  private static boolean control(int character) {
    return Character.isISOControl(character);
  }

  /** A time of day; 24:00 is midnight at the end of a day. */
  static LocalTime time(String key, @Nullable String given) {
    String text = required(key, given);
    if (!text.matches("([01][0-9]|2[0-3]):[0-5][0-9]|24:00")) {
      throw new BadInput(key, "'" + text + "'", "is not a time of day", "\"06:00\" to \"24:00\"");
    }
    return text.equals("24:00") ? LocalTime.MIDNIGHT : LocalTime.parse(text);
  }

  /** What has those names; {@code kind} says what they are names of. */
  static <T> List<T> named(
      String key, @Nullable List<String> names, Map<String, T> known, String kind) {
    return (names == null ? List.<String>of() : names)
        .stream().map(name -> named(key, name, known, kind)).toList();
  }

  private static <T> T named(String key, String name, Map<String, T> known, String kind) {
    @Nullable T found = known.get(name);
    if (found == null) {
      throw new BadInput(
          key,
          name,
          "is not a name under " + kind,
          known.isEmpty() ? "none: there are no " + kind : String.join(", ", known.keySet()));
    }
    return found;
  }

  static @Nullable Path file(String key, @Nullable String given, Path folder) {
    try {
      return given == null ? null : folder.resolve(given);
    } catch (InvalidPathException e) {
      throw new BadInput(key, given, "is not a path", "a file");
    }
  }

  static String lower(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }
}
