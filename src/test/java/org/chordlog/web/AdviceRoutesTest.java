package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
import org.chordlog.store.Some;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Advice, scales and corrections by the API, and what of them is refused. */
final class AdviceRoutesTest {
  private static final String MACHINE = "/api/machines/three-roll%20bender";
  @TempDir Path directory;
  private Served served;

  @BeforeEach
  void open() {
    served = new Served(directory.resolve("data"));
  }

  @AfterEach
  void close() {
    served.close();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "{\"name\": \"dial\"}; unit",
        "{\"unit\": \"mm\"}; name",
        "{\"name\": \"dial\", \"unit\": \" \"}; unit",
        "{\"name\": \"dial\", \"unit\": \"mm\", \"step\": 0}; step",
        "{\"name\": \"dial\", \"unit\": \"mm\", \"lostMotion\": -0.1}; lostMotion",
        "{\"name\": \"dial\", \"unit\": \"mm\", \"radiusChangeMm\": 81}; atRadiusMm",
        "{\"name\": \"dial\", \"unit\": \"mm\", \"atRadiusMm\": 1800}; radiusChangeMm",
        "{\"name\": \"dial\", \"unit\": \"mm\", \"radiusChangeMm\": 0, \"atRadiusMm\": 1}; radiusChange",
        "{\"name\": \"d\", \"unit\": \"mm\", \"radiusChangeMm\": 1, \"atRadiusMm\": -1}; atRadiusMm",
        "{\"name\": \"d\", \"unit\": \"mm\", \"tighter\": \"HIGHER\", \"radiusChangeMm\": 1,"
            + " \"atRadiusMm\": 9}; other way"
      })
  void aScaleIsRefusedInOneSentence(String body, String why) throws Exception {
    HttpResponse<String> answer = served.post(MACHINE + "/scales", body);
    assertEquals(400, answer.statusCode(), answer::body);
    assertTrue(answer.body().contains(why), answer::body);
    assertTrue(served.json(MACHINE + "/scales").isEmpty());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "{\"kind\": \"CORRECTION\", \"settingBefore\": 1}; settingAfter",
        "{\"kind\": \"CORRECTION\", \"settingAfter\": 1}; settingAfter",
        "{\"kind\": \"CORRECTION\", \"settingBefore\": 1, \"settingAfter\": 1e9}; settingAfter",
        "{\"kind\": \"CORRECTION\", \"afterReadingId\": 4711}; afterReadingId",
        "{\"kind\": \"CORRECTION\", \"settingBefore\": \"a\", \"settingAfter\": 1}; settingBefore",
        "{\"kind\": \"CORRECTION\", \"settingBefore\": 1.5, \"settingAfter\": 1.5}; setting before",
        "{\"kind\": \"MATERIAL_LOT\", \"materialLot\": \"lot 1\"}; is bent already",
        "{\"kind\": \"MATERIAL_LOT\"}; materialLot"
      })
  void aCorrectionOrLotIsRefusedAndNothingIsLost(String body, String why) throws Exception {
    Job job = served.job();
    HttpResponse<String> answer = served.post("/api/stations/A/events", body);
    assertEquals(400, answer.statusCode(), answer::body);
    assertTrue(answer.body().contains(why), answer::body);
    assertTrue(served.store.jobs().eventsOfJob(job.id()).isEmpty());
  }

  /** Without a job there is nothing that a correction could belong to. */
  @Test
  void aCorrectionBeforeAnyJobIsRefused() throws Exception {
    HttpResponse<String> answer =
        served.post("/api/stations/A/events", "{\"kind\": \"CORRECTION\"}");
    assertTrue(answer.statusCode() == 400 || answer.statusCode() == 409, answer::body);
    assertTrue(answer.body().contains("job"), answer::body);
  }

  /** The job before is over: what it was advised says nothing of the next one. */
  @Test
  void adviceNeverComesFromAGap() throws Exception {
    served.zeroAndFree();
    Job first = served.job();
    served.readings(first, 20);
    assertFalse(correction().get("text").asText().startsWith("Set up"));
    Job next = served.job();
    assertEquals("Set up: measure the first piece.", correction().get("text").asText());
    assertTrue(correction().get("amount").isNull());
    assertTrue(next.id() > first.id());
  }

  /** As a note, or its lot, of the next job, that somebody prepares. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"kind\": \"NOTE\", \"note\": \"tubes are by the door\"}",
        "{\"kind\": \"MATERIAL_LOT\", \"materialLot\": \"lot 9\"}"
      })
  void whatIsToldOfTheNextJobLeavesTheAdviceAsItWas(String body) throws Exception {
    served.zeroAndFree();
    Job present = served.job();
    served.readings(present, 20);
    Job next = served.store.jobs().add(Some.job("rings", "three-roll bender"), "tester");
    String before = correction().get("text").asText();
    HttpResponse<String> told = served.post("/api/jobs/" + next.id() + "/events", body);
    assertEquals(201, told.statusCode(), told::body);
    assertEquals(before, correction().get("text").asText());
    served.readings(present, 1);
    assertFalse(correction().get("text").asText().startsWith("Set up"), correction()::toString);
  }

  /** A job of before the station went to another machine. */
  @Test
  void adviceNeverComesFromAnotherMachine() throws Exception {
    served.zeroAndFree();
    Job elsewhere = served.store.jobs().add(Some.job("rings", "roller 9"), "tester");
    served.store.jobs().activate("A", elsewhere.id());
    served.stations.at("A").refresh();
    served.readings(elsewhere, 20);
    String there = served.json("/api/machines/roller%209/correction").get("text").asText();
    String here = served.json(MACHINE + "/correction").get("text").asText();
    assertFalse(there.equals(here), here);
    JsonNode atStation = served.json("/api/stations/A/overview").get("correction");
    assertEquals("roller 9", atStation.get("machine").asText());
    assertEquals(there, atStation.get("text").asText());
  }

  @Test
  void aJobWithoutLimitsGetsNoAdviceAndOneWithOneLimitDoes() throws Exception {
    served.zeroAndFree();
    limited(null, null);
    assertEquals("NONE", correction().get("action").asText());
    assertTrue(correction().get("text").asText().contains("no limits"));
    Job one = limited(1788.0, null);
    served.readings(one, 20);
    assertFalse("NONE".equals(correction().get("action").asText()), () -> "" + one);
  }

  private JsonNode correction() throws Exception {
    return served.json("/api/stations/A/overview").get("correction");
  }

  private Job limited(@Nullable Double lower, @Nullable Double upper) {
    Job usual = Some.job("hoops", "three-roll bender");
    Job.Inspection asked = usual.inspection();
    Specification specification =
        new Specification(asked.specification().face(), 1800, lower, upper);
    Job job =
        served
            .store
            .jobs()
            .add(
                Job.opened(
                    usual.order(),
                    usual.workplace(),
                    new Job.Inspection(
                        asked.section(), asked.measuredFace(), specification, asked.plan()),
                    usual.openedAtMicros()),
                "tester");
    served.store.jobs().activate("A", job.id());
    served.stations.at("A").refresh();
    return job;
  }

  @Test
  void correctionsAreDrawnForMachineAndJob() throws Exception {
    assertEquals(404, served.get(MACHINE + "/correction/chart").statusCode());
    Job job = served.job();
    served.readings(job, 30);
    JsonNode all = served.json(MACHINE + "/correction/chart");
    assertTrue(all.get("svg").asText().contains("<svg"));
    JsonNode own = served.json(MACHINE + "/correction/chart?job=" + job.id());
    assertEquals(all.get("places").size(), own.get("places").size());
    assertEquals(404, served.get(MACHINE + "/correction/chart?job=99").statusCode());
    JsonNode compared = served.json("/api/jobs/" + job.id() + "/as-advised");
    assertEquals(10, compared.get("pieces").asInt());
    assertTrue(compared.get("compared").isNull(), "nothing is known of the scale");
  }
}
