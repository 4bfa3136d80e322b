package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A page that names modules ahead names all that it needs and no other. */
final class PreloadTest {
  private static final Path PAGES = Path.of("dashboards");
  private static final Pattern NAMED =
      Pattern.compile("rel=\"modulepreload\" href=\"/parts/([\\w-]+\\.js)\"");
  private static final Pattern MODULE =
      Pattern.compile("type=\"module\" src=\"/parts/([\\w-]+\\.js)\"");
  private static final Pattern IMPORT = Pattern.compile("(?:from|import) \"\\./([\\w-]+\\.js)\"");

  @Test
  void namesWhatIsImported() throws IOException {
    int named = 0;
    for (String page :
        List.of(
            "index",
            "station",
            "gauge",
            "add-station",
            "jobs",
            "job",
            "job-form",
            "machines",
            "machine")) {
      String text = Files.readString(PAGES.resolve(page + ".html"));
      Set<String> needed = new TreeSet<>();
      all(MODULE, text).forEach(module -> follow(module, needed));
      assertEquals(needed, all(NAMED, text), page);
      named += needed.size();
    }
    assertTrue(named > 0);
  }

  private static void follow(String module, Set<String> needed) {
    for (String each : all(IMPORT, read(module))) {
      if (needed.add(each)) {
        follow(each, needed);
      }
    }
  }

  private static String read(String module) {
    try {
      return Files.readString(PAGES.resolve("parts").resolve(module));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Set<String> all(Pattern pattern, String text) {
    Set<String> found = new TreeSet<>();
    Matcher matcher = pattern.matcher(text);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
  }
}
