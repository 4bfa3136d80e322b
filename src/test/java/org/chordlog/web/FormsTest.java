package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.chordlog.web.http.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FormsTest {
  private static final String JOB =
      """
      {"name": "hoops", "part": "hoop", "machine": "three-roll bender", "station": "A",
       "section": {"kind": "ROUND_TUBE", "outsideDiameterMm": 60.3, "wallMm": 3.2},
       "materialLot": "lot 1", "measuredFace": "OUTER",
       "specification": {"face": "CENTRELINE", "targetMm": 1800,
         "lowerLimitMm": 1788, "upperLimitMm": 1812},
       "plan": {"positions": ["start", "end"], "subgroups": "CONSECUTIVE", "subgroupSize": 5},
       "why": "customer changed the drawing"}
      """;

  @TempDir Path directory;

  @Test
  void everyFaultOfAJobIsNamedAtItsField() throws Exception {
    String bad =
        JOB.replace("\"hoops\"", "\"\"")
            .replace("\"A\"", "\"B\"")
            .replace("3.2", "31")
            .replace("1788", "1900")
            .replace("\"subgroupSize\": 5", "\"subgroupSize\": 26");
    try (Served served = new Served(directory)) {
      HttpResponse<String> answer = served.post("/api/jobs", bad);
      assertEquals(400, answer.statusCode());
      assertEquals(Problem.MEDIA_TYPE, answer.headers().firstValue("Content-Type").orElseThrow());
      assertEquals(
          Set.of(
              "name",
              "station",
              "section.wallMm",
              "specification.lowerLimitMm",
              "plan.subgroupSize"),
          fields(answer));
      for (JsonNode fault : Served.tree(answer).get("faults")) {
        assertFalse(fault.get("allowed").asText().isBlank());
      }
    }
  }

  @Test
  void aTargetOutsideItsLimitsIsRefused() throws Exception {
    try (Served served = new Served(directory)) {
      String below = JOB.replace("\"targetMm\": 1800", "\"targetMm\": 1780");
      assertEquals(Set.of("specification.targetMm"), fields(served.post("/api/jobs", below)));
      String above = JOB.replace("\"targetMm\": 1800", "\"targetMm\": 1820");
      assertEquals(Set.of("specification.targetMm"), fields(served.post("/api/jobs", above)));
    }
  }

  @Test
  void whatIsNoJsonOrNoFieldIsRefusedByName() throws Exception {
    try (Served served = new Served(directory)) {
      assertEquals(Set.of("body"), fields(served.post("/api/jobs", "{")));
      assertEquals(Set.of("body"), fields(served.post("/api/jobs", "null")));
      assertEquals(Set.of("body"), fields(served.post("/api/jobs", JOB + "{}")));
      assertEquals(Set.of("nme"), fields(served.post("/api/jobs", "{\"nme\": 1}")));
      String word = JOB.replace("60.3", "\"wide\"");
      HttpResponse<String> wide = served.post("/api/jobs", word);
      assertEquals(Set.of("section.outsideDiameterMm"), fields(wide));
      assertTrue(wide.body().contains("outsideDiameterMm: wide is not a number;"), wide.body());
      HttpResponse<String> comma =
          served.post("/api/jobs", JOB.replace("\"targetMm\": 1800", "\"targetMm\": \"1,800\""));
      assertEquals(Set.of("specification.targetMm"), fields(comma));
      assertTrue(comma.body().contains("a decimal comma or thousands"), comma.body());
      String list = served.post("/api/jobs", JOB.replace("60.3", "[]")).body();
      assertTrue(list.contains("outsideDiameterMm is of the wrong kind;"), list);
      String face = JOB.replace("OUTER", "UPPER");
      assertEquals(Set.of("measuredFace"), fields(served.post("/api/jobs", face)));
      assertEquals(Set.of("limit"), fields(served.get("/api/jobs?limit=0")));
      assertEquals(Set.of("job"), fields(served.get("/api/jobs/x")));
      assertEquals(404, served.get("/api/jobs/99").statusCode());
      assertEquals(413, served.post("/api/jobs", " ".repeat(70_000) + JOB).statusCode());
    }
  }

  private static Set<String> fields(HttpResponse<String> answer) throws Exception {
    Set<String> fields = new TreeSet<>();
    Served.tree(answer).get("faults").forEach(f -> fields.add(f.get("field").asText()));
    return fields;
  }

  @Test
  void aJobIsOpenedChangedDuplicatedClosedAndReopened() throws Exception {
    try (Served served = new Served(directory)) {
      assertEquals(201, served.post("/api/jobs", JOB).statusCode());
      HttpResponse<String> changed = served.put("/api/jobs/1", JOB.replace("1812", "1815"));
      assertEquals(1815, Served.tree(changed).at("/specification/upperLimitMm").asDouble());
      assertEquals(
          Set.of("why"),
          fields(served.put("/api/jobs/1", JOB.replace("customer changed the drawing", ""))));
      HttpResponse<String> copy = served.post("/api/jobs/1/duplicate", "{\"name\": \"more\"}");
      assertEquals("more", Served.tree(copy).get("name").asText());
      assertEquals(200, served.post("/api/jobs/2/close", "{\"why\": \"done\"}").statusCode());
      assertEquals(409, served.post("/api/jobs/2/close", "{}").statusCode());
      assertEquals(409, served.post("/api/stations/A/job", "{\"jobId\": 2}").statusCode());
      assertEquals(200, served.post("/api/jobs/2/reopen", "{}").statusCode());
      assertEquals(200, served.post("/api/stations/A/job", "{\"jobId\": 2}").statusCode());
      assertTrue(served.json("/api/jobs/2").get("active").asBoolean());
      String changes = served.get("/api/changes").body();
      assertTrue(changes.contains("customer changed the drawing"), changes);
      assertTrue(changes.contains("J\u00f6rg"), changes);
    }
  }

  @Test
  void aSnapshotThatIsKnownIsNotSentAgain() throws Exception {
    try (Served served = new Served(directory)) {
      served.readings(served.job(), 12);
      for (String path :
          new String[] {"/api/jobs/1/statistics", "/api/jobs/1/charts/mean-and-range"}) {
        String tag = served.get(path).headers().firstValue("ETag").orElseThrow();
        assertEquals(304, served.get(path, "If-None-Match", tag).statusCode());
        served.readings(served.store.jobs().find(1).orElseThrow(), 3);
        assertEquals(200, served.get(path, "If-None-Match", tag).statusCode());
      }
    }
  }

  /** Another program may compute it another way, other records may bear the same ids. */
  @Test
  void aSnapshotOfAnEarlierRunIsSentAgain() throws Exception {
    String path = "/api/jobs/1/statistics";
    String earlier;
    try (Served served = new Served(directory)) {
      served.readings(served.job(), 12);
      earlier = served.get(path).headers().firstValue("ETag").orElseThrow();
    }
    try (Served served = new Served(directory)) {
      assertEquals(200, served.get(path, "If-None-Match", earlier).statusCode());
    }
  }
}
