package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The help as it is served. */
final class HandbookTest {
  private static final Pattern LINK = Pattern.compile("href=\"([\\w-]+)?(#[^\"]+)?\"");
  private static final Pattern PLACE = Pattern.compile("\"([a-z-]+#[a-z0-9-]+|service)\"");
  private static final Map<String, String> PAGES =
      Handbook.TITLES.keySet().stream()
          .collect(Collectors.toMap(name -> name, name -> Handbook.html(name).orElseThrow()));

  @TempDir Path directory;

  @ParameterizedTest
  @CsvSource({
    "src/docs/stations.md, stations",
    "stations.md#frame-profiles, stations#frame-profiles",
    "src/dist/CHANGELOG.md, changes",
    "DEVELOPERS.md, start",
    "#safety, #safety"
  })
  void linksBetweenFilesLeadToPages(String written, String served) {
    assertEquals(served, Handbook.address(written));
  }

  @Test
  void everyLinkOfTheHelpLeadsToAPageAndAPlaceOnIt() {
    List<String> wrong = new ArrayList<>();
    for (String page : Handbook.TITLES.keySet()) {
      for (MatchResult link : LINK.matcher(String.valueOf(PAGES.get(page))).results().toList()) {
        String to = link.group(1) == null ? page : link.group(1);
        if (!leads(to, link.group(2) == null ? "" : link.group(2))) {
          wrong.add(page + ": " + link.group());
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** {@code place} with its mark, or empty for the page itself. */
  private static boolean leads(String page, String place) {
    return Optional.ofNullable(PAGES.get(page))
        .filter(text -> place.isEmpty() || text.contains("id=\"" + place.substring(1) + "\""))
        .isPresent();
  }

  /** Those of readings, statistics, studies and samples: nobody guesses what "lower_mm" is. */
  @Test
  void everyColumnOfAFileIsExplained() throws Exception {
    String help = Files.readString(Path.of("src/docs/service.md"));
    String section = help.substring(help.indexOf("## Files of tables"));
    List<String> files =
        Files.readAllLines(Path.of("src/test/resources/golden/csv-columns.txt")).stream()
            .filter(line -> !line.matches("(GET /api/(masters|calibrations)|radius).*"))
            .toList();
    assertEquals(9, files.size(), files::toString);
    for (String file : files) {
      for (String column : file.substring(file.lastIndexOf(": ") + 2).split(",", -1)) {
        assertTrue(section.contains("`" + column + "`"), column);
      }
    }
  }

  /** A column without a name is read aloud as nothing. */
  @Test
  void everyColumnOfATableHasAName() {
    for (String page : Handbook.TITLES.keySet()) {
      String html = Handbook.html(page).orElseThrow();
      assertFalse(html.matches("(?s).*<th[^>]*>\\s*</th>.*"), page);
    }
  }

  @Test
  void whatThePagesNameAsTheirHelpIsThere() throws Exception {
    try (Served served = new Served(directory)) {
      String module = served.get("/parts/help-place.js").body();
      Set<String> named =
          PLACE.matcher(module).results().map(each -> each.group(1)).collect(Collectors.toSet());
      assertTrue(named.size() >= 6, named::toString);
      for (String each : named) {
        String[] parts = each.split("#", 2);
        assertTrue(leads(parts[0], parts.length == 1 ? "" : "#" + parts[1]), each);
        assertEquals(200, served.get("/help/" + parts[0]).statusCode());
      }
      assertEquals(404, served.get("/help/nothing").statusCode());
      assertEquals(302, served.get("/help").statusCode());
      String first = served.get("/help").headers().firstValue("Location").orElseThrow();
      assertEquals(200, served.get("/" + first).statusCode(), first);
    }
  }
}
