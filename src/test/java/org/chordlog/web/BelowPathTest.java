package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.chordlog.Await;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every page through a real proxy that has the service below a path. */
final class BelowPathTest extends BrowserTest {
  private static final String AT = "/works/bending/";
  private static final String PROXY =
      """
      server {
        listen 80;
        location %s {
          proxy_pass http://127.0.0.1:8080/;
          proxy_http_version 1.1;
          proxy_set_header Host $http_host;
        }
      }
      """
          .formatted(AT);

  /** Requests of the page that left the path or were refused. */
  private static final String STRAYED =
      "return performance.getEntriesByType('resource')"
          + ".filter(e => !e.name.startsWith('blob:') && (e.responseStatus >= 400"
          + " || !new URL(e.name).pathname.startsWith(arguments[0])))"
          + ".map(e => e.responseStatus + ' ' + e.name)";

  /** Links and forms of the page that lead out of the path. */
  private static final String LEADING_OUT =
      "return [...document.querySelectorAll('a[href]')]"
          + ".filter(a => a.origin === location.origin && !a.pathname.startsWith(arguments[0]))"
          + ".map(a => a.href)";

  @TempDir Path folder;

  @Test
  void everyPageWorksBelowAPath() throws Exception {
    try (Served served = new Served(ShopPages.filled(folder.resolve("data")));
        Nginx proxy = Nginx.start(folder, PROXY, served.web.port())) {
      URI address = URI.create("http://127.0.0.1:" + proxy.port() + AT);
      Visitor visitor = new Visitor(address, browser, "Anna");
      List<String> wrong = new ArrayList<>();
      for (String page : pages(served)) {
        visitor.go("/" + page);
        Await.until(() -> !visitor.text("main").isBlank(), () -> page);
        quiet(visitor);
        wrong.addAll(said(visitor, STRAYED));
        wrong.addAll(said(visitor, LEADING_OUT));
      }
      assertEquals(List.of(), wrong);
      visitor.leavesNothingOnTheConsole();
    }
  }

  /** All that the page asked for has come. */
  static void quiet(Visitor visitor) throws Exception {
    String count = "return performance.getEntriesByType('resource').length";
    Await.until(
        () -> {
          Object before = visitor.page.executeScript(count);
          Object after =
              visitor.page.executeAsyncScript(
                  "const done = arguments[0]; requestIdleCallback(() => setTimeout(() => done("
                      + "performance.getEntriesByType('resource').length), 300))");
          return Objects.equals(before, after);
        });
  }

  @SuppressWarnings("unchecked")
  private static List<String> said(Visitor visitor, String script) {
    return (List<String>) Objects.requireNonNull(visitor.page.executeScript(script, AT));
  }

  /** All of them, with what they are asked to show, and of the help the first and another. */
  private static List<String> pages(Served served) throws Exception {
    long job = served.json("/api/jobs").path("items").get(0).path("id").asLong();
    String machine = served.json("/api/machines").get(0).path("machine").asText();
    Map<String, String> queries =
        Map.of(
            "job.html", "?job=" + job,
            "line.html", "?job=" + job,
            "job-form.html", "?job=" + job,
            "job-changes.html", "?job=" + job,
            "machine.html", "?machine=" + machine.replace(" ", "%20"),
            "station.html", "?station=A",
            "station-settings.html", "?station=A",
            "gauge.html", "?station=A",
            "wall.html", "?stations=A");
    List<String> pages = new ArrayList<>();
    for (String page : PagesTest.pages()) {
      if (!page.equals("study.html")) {
        pages.add(page + queries.getOrDefault(page, ""));
      }
    }
    pages.addAll(List.of("", "help", "help/service"));
    assertTrue(pages.size() > 20, pages::toString);
    return pages;
  }
}
