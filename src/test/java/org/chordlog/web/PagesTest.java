package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages as the service sends them, and as a browser loads them. */
final class PagesTest {
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

  @Test
  void everyFileIsAPageWithTheSharedHead() throws Exception {
    for (String page : pages()) {
      HttpResponse<String> answer = served.get("/" + page);
      assertEquals(200, answer.statusCode(), page);
      assertEquals("no-cache", answer.headers().firstValue("Cache-Control").orElseThrow());
      String type = answer.headers().firstValue("Content-Type").orElseThrow();
      assertTrue(type.startsWith("text/html"), type);
      assertTrue(answer.body().contains("<head>\n  <meta charset=\"utf-8\">"), page);
      assertTrue(answer.body().contains("href=\"/parts/mark.svg\""), page);
    }
    assertEquals(served.get("/index.html").body(), served.get("/").body());
  }

  @Test
  void aKnownPageIsNotSentAgain() throws Exception {
    String tag = served.get("/jobs.html").headers().firstValue("ETag").orElseThrow();
    assertEquals(304, served.get("/jobs.html", "If-None-Match", tag).statusCode());
  }

  @Test
  void whatIsNoPageIsNotFound() throws Exception {
    for (String path :
        List.of("/none.html", "/parts%2Fhead.html", "/..%2Fpages.html", "/Job.html", "/-.html")) {
      assertTrue(served.get(path).statusCode() >= 400, path);
      assertTrue(served.get(path).statusCode() < 500, path);
    }
    assertEquals(404, served.get("/none.html").statusCode());
    assertEquals(200, served.send("HEAD", "/jobs.html", "").statusCode());
    assertEquals(405, served.send("POST", "/jobs.html", "").statusCode());
  }

  /** What the browser fetches for a page's module on a document that names nothing ahead. */
  @Test
  @Tag("browser")
  void everyModuleThatThePageNeedsIsNamedAheadAndNoOther() throws Exception {
    Path profile = directory.resolve("profile");
    try (Visitor visitor = new Visitor(served, profile, "tester")) {
      for (String page : pages()) {
        visitor.go("/" + page);
        Set<String> named = strings(visitor.page.executeScript(NAMED));
        Object module = visitor.page.executeScript(MODULE);
        visitor.go("/health");
        Set<String> fetched = strings(visitor.page.executeAsyncScript(FETCHED, module));
        assertTrue(fetched.remove(module) && fetched.size() > 5, page + " fetched " + fetched);
        assertEquals(fetched, named, page);
      }
    }
  }

  private static final String NAMED =
      "return [...document.querySelectorAll('link[rel=modulepreload]')].map(each => each.href)";

  private static final String MODULE = "return document.querySelector('script[type=module]').src";

  /** The module fails to run there, after all that it imports has been fetched. */
  private static final String FETCHED =
      "const [module, done] = arguments; import(module).catch(() => {}).then(() => done("
          + "performance.getEntriesByType('resource').map(each => each.name)"
          + ".filter(each => each.endsWith('.js'))))";

  private static Set<String> strings(Object list) {
    Set<String> all = new TreeSet<>();
    ((List<?>) list).forEach(each -> all.add(String.valueOf(each)));
    return all;
  }

  private static List<String> pages() throws Exception {
    try (Stream<Path> all = Files.list(Path.of("dashboards"))) {
      return all.map(each -> each.getFileName().toString())
          .filter(each -> each.endsWith(".html"))
          .sorted()
          .toList();
    }
  }
}
