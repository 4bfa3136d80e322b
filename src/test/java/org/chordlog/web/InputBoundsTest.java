package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.store.sqlite.SqliteStore;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What comes in is bounded and readable, and what is refused is the caller's fault in words. */
@Tag("slow")
final class InputBoundsTest {
  private static final String TOKEN = "a-token-of-this-test";
  private static final String LONG = "x".repeat(60_000);
  @TempDir Path directory;

  private static ObjectNode body(Served served, long job) throws Exception {
    ObjectNode body = (ObjectNode) served.json("/api/jobs/" + job);
    body.remove(List.of("id", "currentLot", "revision", "version", "state", "openedAt"));
    body.remove(List.of("sectionWords", "planWords"));
    body.remove(List.of("active", "readings"));
    return body.put("why", "asked for");
  }

  private static JsonNode fault(HttpResponse<String> answer) throws Exception {
    assertEquals(400, answer.statusCode(), answer::body);
    return Served.tree(answer).at("/faults/0");
  }

  @Test
  void everyTextHasALongestAndNoCharactersThatAreNotSeen() throws Exception {
    try (Served served = new Served(directory)) {
      String at = "/api/jobs/" + served.job().id();
      for (String field : List.of("name", "part", "materialLot", "why")) {
        for (String text : List.of(LONG, "a\u0000b", "a\u001b[31m", "a\u202eb")) {
          ObjectNode body = body(served, 1).put(field, text);
          assertEquals(field, fault(served.put(at, body.toString())).get("field").asText());
        }
      }
      ObjectNode body = body(served, 1);
      ((ObjectNode) body.get("plan")).putArray("positions").add("start").add("end\u0007");
      assertTrue(
          fault(served.put(at, body.toString())).get("field").asText().contains("positions"));
      String note = "{\"kind\": \"NOTE\", \"note\": \"two\\nlines\"}";
      assertEquals(201, served.post("/api/stations/A/events", note).statusCode());
      String longNote = note.replace("two", LONG);
      assertEquals(
          "note", fault(served.post("/api/stations/A/events", longNote)).get("field").asText());
    }
  }

  @Test
  void namesOfBridgesMastersAndPeopleAreBoundedToo() throws Exception {
    try (Served served = new Served(directory)) {
      String bridge =
          "{\"name\": \"%s\", \"spanMm\": 200, \"spanUncertaintyMm\": 0.02, \"footRadiusMm\": 5}";
      assertEquals(
          "name", fault(served.post("/api/bridges", bridge.formatted(LONG))).get("field").asText());
      String master =
          "{\"name\": \"a\\u0001\", \"face\": \"OUTER\", \"radiusMm\": 1800,"
              + " \"expandedUncertaintyMm\": 0.1}";
      assertEquals("name", fault(served.post("/api/masters", master)).get("field").asText());
      String[] hidden = {Call.BY, "J%C3%B6rg%0A", "Content-Type", "application/json"};
      assertEquals(403, served.send("POST", "/api/masters", "{}", hidden).statusCode());
    }
  }

  @Test
  void nothingInAListAndImpossibleYearsAreBadInput() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      ObjectNode body = body(served, job.id());
      ((ObjectNode) body.get("plan")).putArray("positions").addNull();
      HttpResponse<String> refused = served.put("/api/jobs/" + job.id(), body.toString());
      assertTrue(fault(refused).get("field").asText().startsWith("plan.positions"), refused::body);
      for (String year : List.of("%2B999999999-12-31", "-999999999-01-01")) {
        String query = "?from=" + year + "T00:00:00Z";
        for (String of : List.of("/readings", "/statistics")) {
          String at = "/api/jobs/" + job.id() + of + query;
          assertEquals("from", fault(served.get(at)).get("field").asText(), at);
        }
      }
    }
  }

  @Test
  void aHeaderDoesNotTurnALookIntoAChange() throws Exception {
    try (Served served = new Served(directory)) {
      served.job();
      String[] disguised = {
        "X-HTTP-Method-Override", "POST", Call.BY, "x", "Content-Type", "application/json"
      };
      assertEquals(405, served.get("/api/stations/A/next-piece", disguised).statusCode());
      assertEquals(200, served.get("/api/jobs", disguised).statusCode());
      assertEquals(1, served.json("/api/jobs").get("items").size());
    }
  }

  @Test
  void wrongKeysAreMadeToWaitAlsoForTheRightOne() throws Exception {
    WebSettings open = new WebSettings("0.0.0.0", 0, TOKEN, 4, 4, 65_536);
    try (Served served = new Served(directory, open)) {
      List<Integer> codes = new ArrayList<>();
      for (int i = 0; i < 12; i++) {
        codes.add(keyed(served, "wrong-key-number-" + i).statusCode());
      }
      assertEquals(10, codes.stream().filter(code -> code == 401).count(), codes::toString);
      assertEquals(429, codes.get(11));
      HttpResponse<String> right = keyed(served, TOKEN);
      assertEquals(429, right.statusCode());
      assertFalse(right.headers().firstValue("Retry-After").orElseThrow().isBlank());
      assertEquals(200, served.get("/api/stations").statusCode(), "looking is not held up");
    }
  }

  private static HttpResponse<String> keyed(Served served, String key) throws Exception {
    return served.send(
        "POST",
        "/api/jobs",
        "{}",
        Call.BY,
        "x",
        "Content-Type",
        "application/json",
        "Authorization",
        "Bearer " + key);
  }

  @Test
  void whatCanNotBeStoredNowIsAnsweredWithTheReason() throws Exception {
    try (Served served = new Served(directory)) {
      served.job();
      String url = "jdbc:sqlite:" + directory.resolve(SqliteStore.FILE_NAME);
      try (var other = DriverManager.getConnection(url);
          var statement = other.createStatement()) {
        var unused = statement.executeUpdate("BEGIN IMMEDIATE");
        HttpResponse<String> answer = served.post("/api/jobs/1/close", "{}");
        assertEquals(503, answer.statusCode());
        assertTrue(
            answer.body().contains("another program holds the database locked"), answer::body);
        boolean none = statement.execute("ROLLBACK");
        assertFalse(none, "it gives no rows");
      }
      assertEquals("OPEN", served.json("/api/jobs/1").get("state").asText());
    }
  }

  /** Numbers of a query are written as people write them, with a decimal point. */
  @Test
  void aNumberOfAQueryIsNotWrittenAsProgramsDo() throws Exception {
    try (Served served = new Served(directory)) {
      for (String text : List.of("1d", "2f", "0x1p3", "NaN", "Infinity", "1e999", "1,5", "two")) {
        JsonNode fault = fault(served.get("/api/stations/A/radius?depthMm=" + text));
        assertEquals("depthMm", fault.get("field").asText(), text);
      }
      served.job();
      String huge = served.get("/api/stations/A/radius?depthMm=1e300").body();
      assertTrue(huge.contains("1e300") && huge.contains("is too large"), huge);
    }
  }

  @Test
  void noCellOfATableBeginsAFormula() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      ObjectNode body = body(served, job.id());
      body.put("name", "=cmd|'/C calc'!A0").put("part", "@SUM(1)").put("materialLot", "-2+3");
      assertEquals(200, served.put("/api/jobs/" + job.id(), body.toString()).statusCode());
      served.readings(job, 2);
      String csv = served.get("/api/jobs/" + job.id() + "/readings.csv").body();
      assertTrue(csv.contains("'=cmd|'/C calc'!A0,'@SUM(1)"), csv);
      assertFalse(csv.contains(",=") || csv.contains(",@") || csv.contains(",-2+3"), csv);
    }
  }

  @Test
  void filesForSpreadsheetsThatReadCommas() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 2);
      String path = "/api/jobs/" + job.id() + "/readings.csv?decimal=";
      String first = served.get(path + "Comma").body().lines().skip(1).findFirst().orElseThrow();
      assertTrue(first.contains(';' + job.part() + ';'), first);
      assertTrue(first.matches(".*;\\d+,\\d+;\\d+,\\d+;.*"), first);
      assertEquals("decimal", fault(served.get(path + "dot")).get("field").asText());
      assertEquals("seal", fault(served.get(path + "comma&seal=true")).get("field").asText());
    }
  }

  /** A cell that was made harmless is read in again as the text it was. */
  @Test
  void masterDataComesBackAsItWas() throws Exception {
    try (Served served = new Served(directory)) {
      String master =
          "{\"name\": \"+R1800\", \"face\": \"OUTER\", \"radiusMm\": 1800,"
              + " \"expandedUncertaintyMm\": 0.1}";
      assertEquals(201, served.post("/api/masters", master).statusCode());
      String csv = served.get("/api/masters.csv").body();
      assertTrue(csv.contains("'+R1800"), csv);
      ObjectNode file = Json.shared().createObjectNode();
      String imported = file.put("csv", csv).toString();
      assertEquals(200, served.post("/api/masters/import", imported).statusCode());
      assertEquals(1, served.json("/api/masters").size(), "it is the same master");
    }
  }
}
