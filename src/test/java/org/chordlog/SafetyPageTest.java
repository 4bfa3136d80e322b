package org.chordlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Every test that the page on mistakes, damage and attack names is there, with that method. */
final class SafetyPageTest {
  private static final Path PAGE = Path.of("src/docs/safety.md");

  /** A class, or a class and one of its methods, in code of the page. */
  private static final Pattern NAMED =
      Pattern.compile("`([A-Z][A-Za-z]*(?:Test|IT))(?:\\.([a-z][A-Za-z0-9]*))?`");

  /** Methods that follow such a name, as in `ATest.one`, `two`. */
  private static final Pattern FOLLOWING = Pattern.compile(", `([a-z][A-Za-z0-9]{15,})`");

  /**
   * Words of a row without a test: of figures that a program gave, or of what is not met or not
   * ours.
   */
  private static final Pattern WITHOUT =
      Pattern.compile("`java -cp|not met|not ours|no test|by hand|as above|\\| none \\|");

  private static Map<String, String> sources() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
      Map<String, String> sources = new HashMap<>();
      for (Path each : files.filter(file -> file.toString().endsWith(".java")).toList()) {
        String name = Objects.requireNonNull(each.getFileName()).toString().replace(".java", "");
        sources.put(name, Files.readString(each));
      }
      return sources;
    }
  }

  @Test
  void everyTestItNamesIsThere() throws Exception {
    Map<String, String> sources = sources();
    List<String> missing = new ArrayList<>();
    int named = 0;
    for (String line : Files.readAllLines(PAGE)) {
      Matcher name = NAMED.matcher(line);
      String last = "";
      while (name.find()) {
        named++;
        last = name.group(1);
        require(sources, last, name.group(2), missing);
      }
      Matcher following = FOLLOWING.matcher(line);
      while (!last.isEmpty() && following.find()) {
        require(sources, last, following.group(1), missing);
      }
    }
    assertEquals(List.of(), missing);
    assertTrue(named > 60, named + " named");
  }

  /** What says that it is done or met names the test that holds it, or says that there is none. */
  @Test
  void everyRowNamesATestOrSaysThatThereIsNone() throws Exception {
    List<String> unproved = new ArrayList<>();
    int rows = 0;
    String before = "";
    for (String line : Files.readAllLines(PAGE)) {
      boolean row = line.startsWith("| ") && before.startsWith("|");
      rows += row ? 1 : 0;
      if (row && !NAMED.matcher(line).find() && !WITHOUT.matcher(line).find()) {
        unproved.add(line);
      }
      before = line;
    }
    assertEquals(List.of(), unproved);
    assertTrue(rows > 100, rows + " rows");
  }

  private static void require(
      Map<String, String> sources, String test, @Nullable String method, List<String> missing) {
    String source = sources.get(test);
    if (source == null || (method != null && !has(sources, source, method))) {
      missing.add(test + (method == null ? "" : "." + method));
    }
  }

  /** Its own, or one of the contract that it runs. */
  private static boolean has(Map<String, String> sources, String source, String method) {
    return source.contains("void " + method + "(")
        || sources.entrySet().stream()
            .anyMatch(
                each ->
                    each.getKey().endsWith("Contract")
                        && source.contains(each.getKey())
                        && each.getValue().contains("void " + method + "("));
  }
}
