package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages as the service sends them. */
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
      assertTrue(answer.body().contains("href=\"" + KeptFiles.folder() + "mark.svg\""), page);
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
    HttpResponse<String> page = served.get("/help/%3Cb%3E", "Accept", "text/html,*/*");
    assertEquals(404, page.statusCode());
    assertTrue(page.body().contains("There is no page of the help &lt;b&gt;."), page.body());
    assertTrue(page.body().contains("<a href=\"../\">To the first page</a>"), page.body());
    assertTrue(page.body().contains("src=\"../parts/theme.js\""), "light or dark as the device");
    String data = served.get("/api/jobs/99", "Accept", "text/html,*/*").body();
    assertTrue(data.startsWith("{"), data);
    assertEquals(200, served.send("HEAD", "/jobs.html", "").statusCode());
    assertEquals(405, served.send("POST", "/jobs.html", "").statusCode());
  }

  static List<String> pages() throws Exception {
    try (Stream<Path> all = Files.list(Path.of("dashboards"))) {
      return all.map(each -> each.getFileName().toString())
          .filter(each -> each.endsWith(".html"))
          .sorted()
          .toList();
    }
  }
}
