package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
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
  private static final int FORMS_OF_ONE = 125;
  @TempDir Path directory;

  /** The job as a form would send it back, with that target. */
  static String form(JsonNode job, double upperMm) {
    ObjectNode body = job.deepCopy();
    body.remove(List.of("id", "currentLot", "revision", "version", "state", "openedAt"));
    body.remove(List.of("sectionWords", "planWords"));
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

  /** One of four callers: its forms are as old as they happen to be, some much older. */
  private static List<String> formsDone(Served served, String at, int caller) throws Exception {
    Random random = new Random(caller);
    List<String> done = new ArrayList<>();
    JsonNode seen = served.json(at);
    for (int i = 0; i < FORMS_OF_ONE; i++) {
      seen = random.nextInt(3) == 0 ? seen : served.json(at);
      String version = seen.get("version").asText();
      String body = form(seen, 1_805 + 0.01 * (caller * FORMS_OF_ONE + i));
      int status = put(served, at, body, version).statusCode();
      assertTrue(status == 200 || status == 412, status + " for form " + i);
      if (status == 200) {
        done.add(version);
      }
    }
    return done;
  }

  /** A state that two forms had changed would have lost one of the changes. */
  @Test
  void of500FormsNoneChangesAStateThatAnotherHasChanged() throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(4);
    try (Served served = new Served(directory)) {
      Job job = served.job();
      List<Future<List<String>>> callers = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        int caller = i;
        callers.add(pool.submit(() -> formsDone(served, "/api/jobs/" + job.id(), caller)));
      }
      List<String> done = new ArrayList<>();
      for (Future<List<String>> caller : callers) {
        done.addAll(caller.get());
      }
      assertEquals(done.size(), Set.copyOf(done).size());
      assertEquals(done.size() + 1, served.store.jobs().revisions(job.id()).size());
      assertTrue(done.size() < 4 * FORMS_OF_ONE, "none was stale");
    } finally {
      pool.shutdown();
    }
  }

  @Test
  void aBridgeIsReplacedOnceByTwoStaleForms() throws Exception {
    try (Served served = new Served(directory)) {
      long bridge = served.json("/api/bridges").get(0).get("id").asLong();
      String form =
          "{\"name\": \"long\", \"spanMm\": %d, \"spanUncertaintyMm\": 0.02,"
              + " \"footRadiusMm\": 5, \"why\": \"measured anew\"}";
      String at = "/api/bridges/" + bridge;
      assertEquals(200, served.put(at, form.formatted(201)).statusCode());
      HttpResponse<String> stale = served.put(at, form.formatted(202));
      assertEquals(409, stale.statusCode(), stale::body);
      assertEquals(1, served.json("/api/bridges").size());
      assertEquals(201, served.json("/api/bridges").get(0).get("spanMm").doubleValue());
    }
  }

  @Test
  void settingsOfAStationAreChangedAsTheyWereSeen() throws Exception {
    try (Served served = new Served(directory)) {
      String at = "/api/stations/A/settings";
      JsonNode seen = served.json(at);
      ObjectNode body = seen.deepCopy();
      String version = body.remove("version").asText();
      ((ObjectNode) body.get("station")).put("machine", "another bender");
      assertEquals(200, put(served, at, body.toString(), version).statusCode());
      HttpResponse<String> stale = put(served, at, body.toString(), version);
      assertEquals(412, stale.statusCode(), stale::body);
      assertEquals("another bender", Served.tree(stale).at("/present/station/machine").asText());
      String now = Served.tree(stale).at("/present/version").asText();
      assertEquals(now, served.json(at).get("version").asText());
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
