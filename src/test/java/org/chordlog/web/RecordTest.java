package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.chordlog.Await;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the record keeps straight: closed jobs, revisions of limits, machines, excluded readings.
 */
final class RecordTest {
  private static final String JOB =
      """
      {"name": "hoops", "part": "hoop", "machine": "three-roll bender", "station": "A",
       "section": {"kind": "ROUND_TUBE", "outsideDiameterMm": 60.3, "wallMm": 3.2},
       "materialLot": "lot 1", "measuredFace": "OUTER",
       "specification": {"face": "CENTRELINE", "targetMm": 1800,
         "lowerLimitMm": 1788, "upperLimitMm": 1812},
       "plan": {"positions": ["start", "middle", "end"], "subgroups": "INDIVIDUAL"},
       "why": "customer changed the drawing"}
      """;

  @TempDir Path directory;
  private Served served;

  @BeforeEach
  void open() {
    served = new Served(directory);
  }

  @AfterEach
  void close() {
    served.close();
  }

  /** The plunger goes onto a piece, whose depth asks for a reading, after the job was closed. */
  @Test
  void aClosedJobTakesNoReading() throws Exception {
    served.zeroAndFree();
    Job job = served.job();
    assertEquals(200, served.post("/api/jobs/" + job.id() + "/close", "{}").statusCode());
    served.stations.at("A").refresh();
    served.indicator.show(2.732);
    Await.until(() -> refused() > 0);
    assertEquals(0, served.store.readings().countOfJob(job.id()));
    assertFalse(served.post("/api/stations/A/trigger", "{}").body().contains("radiusMm\":1"));
    assertEquals(0, served.store.readings().countOfJob(job.id()));
  }

  /** What the station measures from would stay, whatever the record said. */
  @Test
  void aZeroIsNotTakenBackButSetAnew() throws Exception {
    Job job = served.job();
    served.zeroAndFree();
    JobEvent zero =
        served.store.jobs().eventsOfJob(job.id()).stream()
            .filter(each -> each.kind() == JobEvent.Kind.ZERO)
            .findFirst()
            .orElseThrow();
    HttpResponse<String> answer =
        served.post(
            "/api/jobs/%d/events/%d/take-back".formatted(job.id(), zero.id()),
            "{\"reason\": \"on a piece\"}");
    assertEquals(400, answer.statusCode());
    assertTrue(answer.body().contains("a new zero, set with the bridge on the flat"));
    assertEquals(List.of(), served.store.jobs().withdrawalsOfJob(job.id(), 0));
  }

  @Test
  void aBridgeIsNotTakenBackButChangedAgain() throws Exception {
    Job job = served.job();
    long bridge = served.store.gauges().add(Some.bridge("short"), "tester").id();
    String body = "{\"bridgeId\": " + bridge + "}";
    assertEquals(200, served.post("/api/stations/A/bridge", body).statusCode());
    JsonNode changed = served.json("/api/jobs/" + job.id() + "/events").get(0);
    assertEquals("BRIDGE", changed.get("kind").asText());
    assertEquals("short", changed.get("note").asText());
    assertFalse(changed.get("canBeTakenBack").asBoolean());
    String path = "/api/jobs/" + job.id() + "/events/" + changed.get("id").asLong() + "/take-back";
    HttpResponse<String> answer = served.post(path, "{\"reason\": \"was not\"}");
    assertEquals(400, answer.statusCode());
    assertTrue(answer.body().contains("goes on measuring with this bridge"), answer::body);
    String told = "{\"kind\": \"BRIDGE\", \"note\": \"long\"}";
    assertEquals(400, served.post("/api/jobs/" + job.id() + "/events", told).statusCode());
  }

  /** In one request: the right lot stands where the wrong one stood, or nothing changes. */
  @Test
  void aLotIsPutRightInOneRequest() throws Exception {
    Job job = served.job();
    served.readings(job, 4);
    long second = served.store.readings().ofJob(job.id(), 0, 2).get(1).id();
    String path = "/api/jobs/" + job.id() + "/events";
    String lot = "{\"kind\": \"MATERIAL_LOT\", \"materialLot\": \"B\", \"afterReadingId\": %d}";
    long wrong = Served.tree(served.post(path, lot.formatted(second))).get("id").asLong();
    String right =
        "{\"kind\": \"MATERIAL_LOT\", \"materialLot\": \"C\", \"replaces\": %d, \"note\": \"%s\"}";
    HttpResponse<String> unsaid = served.post(path, right.formatted(wrong, ""));
    assertEquals(400, unsaid.statusCode());
    assertTrue(unsaid.body().contains("why the event was wrong"), unsaid::body);
    JsonNode kept = Served.tree(served.post(path, right.formatted(wrong, "misread")));
    assertEquals(second, kept.get("afterReadingId").asLong());
    JsonNode events = served.json(path);
    assertEquals(2, events.size());
    assertEquals("misread", events.get(0).get("takenBackReason").asText());
    assertEquals(Optional.of("C"), served.store.jobs().materialLot(job.id()));
    HttpResponse<String> again = served.post(path, right.formatted(wrong, "again"));
    assertEquals(400, again.statusCode());
    assertTrue(again.body().contains("is taken back already"), again::body);
    assertEquals(400, served.post(path, right.formatted(99, "none such")).statusCode());
    assertEquals(2, served.store.jobs().eventsOfJob(job.id()).size());
  }

  private long refused() {
    return served.stations.status("A").counts().rejections().values().stream()
        .mapToLong(Long::longValue)
        .sum();
  }

  @Test
  void changedLimitsJudgeEveryReadingAnewAndTheDecisionOfItsTimeStays() throws Exception {
    assertEquals(201, served.post("/api/jobs", JOB).statusCode());
    Job job = served.store.jobs().find(1).orElseThrow();
    served.readings(job, 20);
    String tighter = JOB.replace("1788", "1798").replace("1812", "1802");
    assertEquals(200, served.put("/api/jobs/1", tighter).statusCode());
    int changed = 0;
    for (JsonNode reading : served.json("/api/jobs/1/readings").get("items")) {
      changed += reading.get("decision").equals(reading.get("decisionAtTime")) ? 0 : 1;
    }
    assertTrue(changed > 5, changed + " changed");
    JsonNode revisions = served.json("/api/jobs/1/revisions");
    assertEquals(2, revisions.size());
    assertTrue(revisions.toString().contains("customer changed the drawing"));
  }

  /** Radius 1806.1 of piece 7: inside 1788 to 1812, then outside 1798 to 1802. */
  @Test
  void stationAndListOfJobsGoByTheLimitsInForce() throws Exception {
    assertEquals(201, served.post("/api/jobs", JOB).statusCode());
    served.post("/api/stations/A/job", "{\"jobId\": 1}");
    served.readings(served.store.jobs().find(1).orElseThrow(), 20);
    String out = "OUT_OF_TOLERANCE";
    assertFalse(overview().get("findings").toString().contains(out));
    assertFalse(served.json("/api/attention").toString().contains("does not conform"));
    String tighter = JOB.replace("1788", "1798").replace("1812", "1802");
    assertEquals(200, served.put("/api/jobs/1", tighter).statusCode());
    assertTrue(overview().get("findings").toString().contains(out), overview()::toString);
    assertEquals("BAD", overview().at("/piece/tone").asText());
    String attention = served.json("/api/attention").toString();
    assertTrue(attention.contains("Newest reading (piece 7"), attention);
  }

  @Test
  void aJobIsOfTheMachineOfItsStation() throws Exception {
    HttpResponse<String> other =
        served.post("/api/jobs", JOB.replace("three-roll bender", "roller 9"));
    assertEquals(400, other.statusCode());
    assertTrue(other.body().contains("\"machine\""), other.body());
  }

  /**
   * Centreline 10 mm of a tube of 60.3 mm: the inner face would lie beyond the axis of the bend.
   */
  @Test
  void aRadiusThatTheSectionCanNotHaveIsRefused() throws Exception {
    String tight = JOB.replace("1800", "10").replace("1788", "9").replace("1812", "11");
    HttpResponse<String> answer = served.post("/api/jobs", tight);
    assertEquals(400, answer.statusCode(), answer.body());
  }

  @Test
  void afterAnUndoNoOlderVerdictStandsThere() throws Exception {
    Job job = served.job();
    served.readings(job, 3);
    assertFalse(overview().get("piece").isNull());
    served.store.readings().add(new Exclusion(0, 3, true, "wrong piece", Some.T0, "me"));
    assertTrue(overview().get("piece").isNull());
  }

  private JsonNode overview() throws Exception {
    return served.json("/api/stations/A/overview");
  }
}
