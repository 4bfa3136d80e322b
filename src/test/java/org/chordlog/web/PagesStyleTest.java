package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The files of the pages are as readable as the Java. Every fault names file and line; what a
 * formatter for JavaScript and CSS writes at a width of 110 passes.
 */
final class PagesStyleTest {
  private static final int WIDTH = 120;
  private static final Pattern NAME = Pattern.compile("[a-z]+(-[a-z]+)*\\.(html|js|css|svg)");

  /** A start of a rule or of a list of selectors or values, one declaration, or an end. */
  private static final Pattern CSS_LINE =
      Pattern.compile("|[^;{}]*[,{]|[^;{}]*|[^;{}]*;|}", Pattern.DOTALL);

  private static final Pattern CSS_TEXT =
      Pattern.compile("\"[^\"\\n]*\"|url\\([^)\\n]*\\)|/\\*.*?\\*/", Pattern.DOTALL);

  /** A regular expression, literal, made or named, that is used on a text. */
  private static final Pattern REWRITTEN =
      Pattern.compile(
          "\\.(replace|replaceAll|match|matchAll|split|search)\\(\\s*(/|[A-Z]{2})[^\\n]*"
              + "|new RegExp\\([^\\n]*|= /[^/*\\n][^\\n]*/[a-z]*[;,]");

  /** A text that is a path of the service with its first slash. */
  private static final Pattern FROM_TOP =
      Pattern.compile(
          "(?<!split\\()[\"'`(]/(?:(?:api|parts|fonts|help|health|metrics)\\b|[\\w-]+\\.html|[\"'`?#)])");

  /** Modules whose regular expressions work on no sentence, and on what they do. */
  private static final Map<String, String> NO_SENTENCES =
      Map.of(
          "add-station.js", "signs for control characters in what a device sent",
          "station-settings.js", "names of settings",
          "times.js", "times in ISO 8601",
          "uncertainty.js", "the exponent of a number",
          "units.js", "numbers as people write them");

  @Test
  void namesAreLowerCaseWithHyphens() throws IOException {
    List<String> wrong =
        files().stream()
            .map(file -> file.getFileName().toString())
            .filter(name -> !NAME.matcher(name).matches())
            .toList();
    assertEquals(List.of(), wrong);
  }

  /** A place where a line may break between a number and its unit, or after ±. */
  private static final Pattern PARTED =
      Pattern.compile("\\} \\$\\{[a-z.]*unit(\\(\\))?\\}|\\} [%µ]|\\} mm[^a-z]|± \\$\\{");

  @Test
  void noLineIsLongIndentedByTabsOrEndsInBlanks() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files()) {
      List<String> lines = Files.readAllLines(file);
      for (int i = 0; i < lines.size(); i++) {
        String line = lines.get(i);
        if (line.length() > WIDTH || line.contains("\t") || !line.equals(line.stripTrailing())) {
          wrong.add(file + ":" + (i + 1) + ": " + line);
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void everyStyleRuleAndDeclarationHasItsOwnLine() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files()) {
      if (file.toString().endsWith(".css")) {
        wrong.addAll(crowdedLines(file));
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void aCrowdedStyleSheetIsFound() {
    assertTrue(CSS_LINE.matcher("  color: red;").matches());
    assertTrue(CSS_LINE.matcher(".a,").matches());
    for (String crowded : List.of(".a { color: red; }", "color: red; margin: 0;", "} .b {")) {
      assertTrue(!CSS_LINE.matcher(crowded).matches(), crowded);
    }
  }

  /**
   * What the service says reaches the page in the viewer's words and unit; a page that rewrites it
   * makes every sentence a part of the API.
   */
  @Test
  void noModuleRewritesTextByARegularExpression() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files()) {
      String name = file.getFileName().toString();
      if (name.endsWith(".js") && !NO_SENTENCES.containsKey(name)) {
        REWRITTEN
            .matcher(Files.readString(file))
            .results()
            .forEach(each -> wrong.add(file + ": " + each.group()));
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void aRewrittenSentenceIsFound() {
    for (String line :
        List.of(
            "text.replace(/ mm/g, ' in')",
            "said.replaceAll(LENGTH, inches)",
            "words.match(/\\d+ mm/)",
            "new RegExp('mm')",
            "const LENGTH = /(-?\\d+) mm\\b/g;")) {
      assertTrue(REWRITTEN.matcher(line).find(), line);
    }
    assertFalse(REWRITTEN.matcher("value.toFixed(3).replace(\"-\", \"−\")").find());
  }

  /** A line that ends with a number and goes on with its unit is read wrong. */
  @Test
  void aNumberAndItsUnitAreNeverOnTwoLines() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files()) {
      if (file.toString().endsWith(".js")) {
        PARTED
            .matcher(Files.readString(file))
            .results()
            .forEach(each -> wrong.add(file + ": " + each.group()));
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void aPartedNumberIsFound() {
    for (String line :
        List.of("`${length(mm, 1)} ${unit()}`", "`${fixed(p, 2)} % of all`", "`± ${u}`")) {
      assertTrue(PARTED.matcher(line).find(), line);
    }
    assertFalse(PARTED.matcher("`${value} ${plusMinus}`, `${mm}\\u00a0${unit()}`").find());
  }

  /** A page that names its service from the top of the host works at the top of a host only. */
  @Test
  void noPageNamesItsServiceFromTheTopOfTheHost() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (Path file : files()) {
      FROM_TOP
          .matcher(Files.readString(file))
          .results()
          .forEach(each -> wrong.add(file + ": " + each.group()));
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void aPathFromTheTopOfTheHostIsFound() {
    for (String line :
        List.of(
            "get(`/api/jobs/${id}`)",
            "import words from \"/api/words.js\";",
            "h(\"a\", { href: \"/\" })",
            "<a href=\"/jobs.html\">",
            "get('/health')",
            "url(/fonts/a.ttf)")) {
      assertTrue(FROM_TOP.matcher(line).find(), line);
    }
    for (String line : List.of("get(\"api/jobs\")", "link.includes(\"/by-path/\")", "a / b")) {
      assertFalse(FROM_TOP.matcher(line).find(), line);
    }
  }

  private static List<String> crowdedLines(Path file) throws IOException {
    String text =
        CSS_TEXT
            .matcher(Files.readString(file))
            .replaceAll(each -> each.group().startsWith("/*") ? blank(each.group()) : "x");
    List<String> lines = text.lines().map(String::strip).toList();
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (!CSS_LINE.matcher(lines.get(i)).matches()) {
        wrong.add(file + ":" + (i + 1) + ": " + lines.get(i));
      }
    }
    return wrong;
  }

  /** A comment without its words, so that lines keep their numbers. */
  private static String blank(String comment) {
    return "\n".repeat((int) comment.lines().count() - 1);
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> all = Files.walk(Path.of("dashboards"))) {
      List<Path> files = all.filter(Files::isRegularFile).sorted().toList();
      assertTrue(files.size() > 50, "dashboards holds " + files);
      return files;
    }
  }
}
