package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.chordlog.measure.Job;
import org.chordlog.web.http.Call;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two people change one job: the second one is told what the first one did, and nothing is lost.
 */
final class ChangedMeanwhileTest {
  @TempDir Path directory;

  /** The job as a form would send it back, with that target. */
  private static String form(JsonNode job, double upperMm) {
    ObjectNode body = job.deepCopy();
    body.remove(List.of("id", "currentLot", "revision", "version", "state", "openedAt"));
    body.remove(List.of("active", "readings"));
    ((ObjectNode) body.get("specification")).put("upperLimitMm", upperMm);
    return body.put("why", "drawing changed").toString();
  }

  private static HttpResponse<String> put(Served served, String at, String body, String version)
      throws Exception {
    return served.send(
        "PUT",
        at,
        body,
        Call.BY,
        "tester",
        "Content-Type",
        "application/json",
        "If-Match",
        '"' + version + '"');
  }

  @Test
  void aStaleFormIsRefusedWithThePresentState() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      String at = "/api/jobs/" + job.id();
      JsonNode seen = served.json(at);
      String version = seen.get("version").asText();
      assertEquals(200, put(served, at, form(seen, 1_805), version).statusCode());
      HttpResponse<String> stale = put(served, at, form(seen, 1_812), version);
      assertEquals(412, stale.statusCode(), stale::body);
      assertEquals(
          1_805, Served.tree(stale).at("/present/specification/upperLimitMm").doubleValue());
      assertEquals(1_805, served.json(at).at("/specification/upperLimitMm").doubleValue());
      String now = Served.tree(stale).at("/present/version").asText();
      assertEquals(200, put(served, at, form(seen, 1_812), now).statusCode());
      assertEquals(1_812, served.json(at).at("/specification/upperLimitMm").doubleValue());
    }
  }

  @Test
  void theTagOfTheAnswerIsTakenTooAndReadingsDoNotMakeItStale() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      String at = "/api/jobs/" + job.id();
      HttpResponse<String> seen = served.get(at);
      String tag = seen.headers().firstValue("ETag").orElseThrow();
      assertEquals(304, served.get(at, "If-None-Match", tag).statusCode());
      served.readings(job, 3);
      assertEquals(200, served.get(at, "If-None-Match", tag).statusCode(), "it counts readings");
      String body = form(Served.tree(seen), 1_805);
      assertEquals(200, put(served, at, body, tag.replace("\"", "")).statusCode());
    }
  }

  @Test
  void ofManyThatChangeTheSameStateAtOnceOneDoes() throws Exception {
    int callers = 12;
    ExecutorService pool = Executors.newFixedThreadPool(callers);
    try (Served served = new Served(directory)) {
      String at = "/api/jobs/" + served.job().id();
      JsonNode seen = served.json(at);
      List<Future<Integer>> answers = new ArrayList<>();
      for (int i = 0; i < callers; i++) {
        String body = form(seen, 1_805 + i);
        answers.add(
            pool.submit(() -> put(served, at, body, seen.get("version").asText()).statusCode()));
      }
      List<Integer> codes = new ArrayList<>();
      for (Future<Integer> answer : answers) {
        codes.add(answer.get());
      }
      assertEquals(1, codes.stream().filter(code -> code == 200).count(), codes::toString);
      assertEquals(11, codes.stream().filter(code -> code == 412).count(), codes::toString);
      assertEquals(2, served.json(at).get("revision").asInt());
    } finally {
      pool.shutdown();
    }
  }

  @Test
  void aJobClosedByAnotherIsNotClosedAgainAndUndoNamesItsReading() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      String at = "/api/jobs/" + job.id();
      String version = served.json(at).get("version").asText();
      served.readings(job, 2);
      HttpResponse<String> nameless =
          served.post("/api/stations/A/undo", "{\"reason\": \"rocked\"}");
      assertEquals(400, nameless.statusCode());
      String undo = "{\"reason\": \"rocked\", \"readingId\": 2}";
      assertEquals(200, served.post("/api/stations/A/undo", undo).statusCode());
      HttpResponse<String> again = served.post("/api/stations/A/undo", undo);
      assertEquals(409, again.statusCode(), "sent twice it takes out no other reading");
      assertEquals(1, served.json(at + "/exclusions").size());
      assertEquals(200, put(served, at, form(served.json(at), 1_805), version).statusCode());
      HttpResponse<String> stale =
          served.send(
              "POST",
              at + "/close",
              "{}",
              Call.BY,
              "tester",
              "Content-Type",
              "application/json",
              "If-Match",
              version);
      assertEquals(412, stale.statusCode());
      assertTrue(served.json(at).get("state").asText().equals("OPEN"));
    }
  }
}
