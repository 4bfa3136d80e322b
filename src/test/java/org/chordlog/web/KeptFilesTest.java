package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import org.chordlog.Await;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a browser keeps for good, and when it has to ask again. */
final class KeptFilesTest extends BrowserTest {
  private static final Pattern PART = Pattern.compile("(?:src|href)=\"([^\"]*parts-[^\"]*)\"");

  /** Fetched by the page from the service, not taken from what the browser keeps. */
  private static final String FETCHED =
      "return performance.getEntriesByType('resource')"
          + ".filter(each => /\\/(parts-|fonts\\/)/.test(each.name) && each.transferSize > 0)"
          + ".map(each => each.name)";

  @TempDir static Path directory;
  private static Served served;

  @BeforeAll
  static void serve() {
    served = new Served(directory.resolve("data"));
  }

  @AfterAll
  static void stop() {
    served.close();
  }

  private static String caching(HttpResponse<String> answer) {
    return answer.headers().firstValue("Cache-Control").orElseThrow();
  }

  @Test
  void everyPartThatAPageNamesMayBeKept() throws Exception {
    for (String page : List.of("/", "/job.html", "/help/start", "/sign-in.html")) {
      List<String> parts =
          PART.matcher(served.get(page).body()).results().map(each -> each.group(1)).toList();
      assertTrue(parts.size() > 5, page);
      for (String part : parts) {
        String path = served.uri(page).resolve(part).getPath();
        HttpResponse<String> answer = served.get(path);
        assertEquals(200, answer.statusCode(), path);
        assertEquals("max-age=31536000, immutable", caching(answer), path);
      }
    }
  }

  @Test
  void thePartsOfOtherContentAreThoseOfNowAndNotKept() throws Exception {
    HttpResponse<String> other = served.get("/parts-00000000/dom.js");
    assertEquals("no-cache", caching(other));
    assertEquals(served.get("/parts/dom.js").body(), other.body());
    assertEquals("text/javascript", other.headers().firstValue("Content-Type").orElseThrow());
    for (String none : List.of("none.js", "..%2Fjobs.html", "head.html")) {
      assertEquals(404, served.get("/" + KeptFiles.folder() + "" + none).statusCode(), none);
    }
  }

  @Test
  void byAPlainNameABrowserAsksAgain() throws Exception {
    Map<String, String> cachings =
        Map.of(
            "/parts/dom.js", "no-cache",
            "/help/pictures/chart.png", "no-cache",
            "/fonts/RobotoCondensed-Bold.ttf", "max-age=86400");
    for (String path : cachings.keySet()) {
      HttpResponse<String> answer = served.get(path);
      assertEquals(200, answer.statusCode(), path);
      assertEquals(cachings.get(path), caching(answer), path);
      String tag = answer.headers().firstValue("ETag").orElseThrow();
      assertEquals(304, served.get(path, "If-None-Match", tag).statusCode(), path);
    }
  }

  @Test
  void aChangedFileHasAnotherPath() throws Exception {
    String before = KeptFiles.folder();
    assertEquals(before, KeptFiles.folder());
    var url = Objects.requireNonNull(KeptFiles.class.getResource("/dashboards/parts/mark.svg"));
    Path file = Path.of(url.toURI());
    FileTime time = Files.getLastModifiedTime(file);
    Files.setLastModifiedTime(file, FileTime.fromMillis(time.toMillis() + 1_000));
    try {
      assertNotEquals(before, KeptFiles.folder());
    } finally {
      Files.setLastModifiedTime(file, time);
    }
  }

  @Test
  void fromPageToPageNoPartIsFetchedAgain() throws Exception {
    for (String page : List.of("/jobs.html", "/machines.html", "/jobs.html")) {
      browser.get(served.uri(page).toString());
      Await.until(() -> browser.getTitle().endsWith("Chordlog"), browser::getTitle);
    }
    assertEquals(List.of(), browser.executeScript(FETCHED));
  }
}
