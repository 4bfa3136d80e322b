package org.chordlog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Digits are 0 to 9 whatever the computer's language is. {@code formatted} takes no locale, so
 * numbers go to a {@code %s} there: whole ones as they are, others as a text made before. What
 * takes a locale is held by {@link ArrowsTest}.
 */
final class DigitsTest {
  private static final String LINE = "\"[^\"\\\\\n]*+(?:\\\\.[^\"\\\\\n]*+)*+\"";
  private static final String BLOCK =
      "\"\"\"[^\"\\\\]*+(?:(?:\\\\.|\"(?!\"\"))[^\"\\\\]*+)*+\"\"\"";
  private static final String TEXT = "(?:" + BLOCK + "|" + LINE + ")";

  /** A text, with those that are joined to it. */
  private static final Pattern FORMATTED =
      Pattern.compile("(" + TEXT + "(?:\\s*\\+\\s*" + TEXT + ")*+)\\s*\\)?\\s*\\.formatted\\(");

  private static final Pattern NUMBER =
      Pattern.compile("%[-#+ 0,(]*[0-9]*(?:\\.[0-9]+)?[deEfgGaA]");

  @Test
  void numbersAreNotWrittenInTheLanguageOfTheComputer() throws IOException {
    assertEquals(List.of(), found("src/main/java"));
    assertEquals(List.of(), found("simulator/src/main/java"));
  }

  @Test
  void whatWouldBeWrittenSoIsFound() {
    assertEquals(List.of("\"%d pieces\""), numbersIn("say(\"%d pieces\".formatted(count));"));
    assertEquals(
        List.of("\"a %s\"\n + \" %.2f\""), numbersIn("\"a %s\"\n + \" %.2f\".formatted(1)"));
    assertEquals(List.of("\"\"\"\n%,d\"\"\""), numbersIn("\"\"\"\n%,d\"\"\".formatted(1)"));
    assertEquals(List.of(), numbersIn("\"%s %% done, %04x\".formatted(a, b) + \"%d\""));
  }

  private static List<String> found(String folder) throws IOException {
    List<String> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(Path.of(folder))) {
      for (Path each : files.filter(file -> file.toString().endsWith(".java")).toList()) {
        numbersIn(Files.readString(each)).forEach(text -> found.add(each + ": " + text));
      }
    }
    return found;
  }

  /** The texts of that source that write a number so. */
  private static List<String> numbersIn(String source) {
    List<String> found = new ArrayList<>();
    Matcher formatted = FORMATTED.matcher(source);
    while (formatted.find()) {
      if (NUMBER.matcher(formatted.group(1).replace("%%", "")).find()) {
        found.add(formatted.group(1));
      }
    }
    return found;
  }
}
