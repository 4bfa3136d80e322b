package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/**
 * Studies done at a station over a real pseudo-terminal, step by step as the service asks for them,
 * by virtual operators of known bias and scatter.
 */
@Tag("slow")
final class StudyAtStationTest {
  private static final double SCATTER_MM = 0.004;
  private static final Map<String, Double> BIAS_MM = Map.of("Ann", -0.006, "Bo", 0.0, "Cy", 0.006);

  @TempDir Path directory;
  private final SplittableRandom random = new SplittableRandom(20_261_126);

  private static double pieceMm(String name) {
    return 1788 + 4.0 * Integer.parseInt(name);
  }

  private static String plan(long job, int parts, String operators) {
    List<String> names = IntStream.rangeClosed(1, parts).mapToObj(i -> "\"" + i + "\"").toList();
    return """
        {"station": "A", "name": "hoops", "kind": "CROSSED", "parts": %s, "operators": %s,
         "repeats": 2, "jobId": %d, "seed": 7}"""
        .formatted(names, operators, job);
  }

  /** The operator whom the service names stands the bridge on the piece it names. */
  private void step(StudyHands hands) throws Exception {
    JsonNode next = hands.next();
    double bias = Objects.requireNonNull(BIAS_MM.get(next.get("operator").asText()));
    double depth = StudyHands.depthMm(pieceMm(next.get("part").asText()));
    hands.touch(depth + bias + SCATTER_MM * random.nextGaussian());
  }

  @WaitingTest
  void threeOperatorsAreFoundAsTheyAre() throws Exception {
    String path;
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.zeroAndFree();
      String all = "[\"Ann\", \"Bo\", \"Cy\"]";
      StudyHands hands = StudyHands.start(served, plan(job.id(), 5, all));
      path = hands.path();
      for (int i = 0; i < 12; i++) {
        step(hands);
      }
      JsonNode said = served.json("/api/stations/A/overview").get("verdict");
      assertEquals("Gauge study", said.get("word").asText());
      assertEquals("Step 13 of 30.", said.get("reason").asText());
      assertEquals(400, served.get(path + "/result").statusCode(), "values stay hidden");
      assertEquals(400, served.get(path + "/measurements.csv").statusCode());
      assertEquals(400, served.get(path + "/charts/study-readings").statusCode());
    }
    try (Served served = new Served(directory)) { // a restart in the middle
      assertEquals("RUNNING", served.json(path).get("state").asText());
      assertEquals(12, served.json(path).get("measured").asInt());
      StudyHands hands = new StudyHands(served, path);
      hands.free();
      for (int i = 12; i < 30; i++) {
        step(hands);
      }
      assertTrue(served.json(path).get("next").isNull());
      result(served.json(path + "/result"));
      assertEquals(0, served.store.readings().countOfJob(1), "no reading of the job");
      hands.become("DONE");
      assertTrue(served.json("/api/stations/A").get("study").isNull());
    }
  }

  private static void result(JsonNode result) {
    double nominal = 1800;
    double slope = (StudyHands.depthMm(nominal - 1) - StudyHands.depthMm(nominal + 1)) / 2;
    StudyHands.contains(StudyHands.figure(result, "EV"), SCATTER_MM / slope);
    double squares = BIAS_MM.values().stream().mapToDouble(b -> b * b).sum();
    StudyHands.contains(StudyHands.figure(result, "AV"), Math.sqrt(squares / 2) / slope);
    List<Double> radii =
        new ArrayList<>(IntStream.rangeClosed(1, 5).mapToObj(i -> pieceMm("" + i)).toList());
    double mean = radii.stream().mapToDouble(r -> r).average().orElseThrow();
    double variance = radii.stream().mapToDouble(r -> (r - mean) * (r - mean)).sum() / 4;
    StudyHands.contains(StudyHands.figure(result, "PV"), Math.sqrt(variance));
    assertEquals("FAILS", result.get("verdict").asText(), "24 mm of tolerance for such hands");
    assertEquals(30, result.get("measurements").size());
    assertTrue(result.get("budget").get("ratio").asDouble() > 1.5, "operators are in no budget");
  }

  @WaitingTest
  void aSpoiltMeasurementIsRepeatedAndAPauseGivesTheStationBackToItsJob() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.zeroAndFree();
      StudyHands hands = StudyHands.start(served, plan(job.id(), 2, "[\"Ann\", \"Bo\"]"));
      String path = hands.path();
      step(hands);
      step(hands);
      JsonNode second = served.json(path).get("lastMeasurementId");
      JsonNode again =
          StudyHands.posted(served, path + "/measure-again", "{\"reason\": \"slipped\"}");
      assertEquals(2, again.get("next").get("step").asInt());
      step(hands);
      assertNotEquals(second, served.json(path).get("lastMeasurementId"));
      hands.refused(StudyHands.depthMm(650), "FAR_FROM_TARGET"); // no piece of the study
      assertEquals(2, served.json(path).get("measured").asInt());
      StudyHands.posted(served, path + "/state", "{\"state\": \"PAUSED\", \"why\": \"weekend\"}");
      served.indicator.show(StudyHands.depthMm(1800));
      Await.until(() -> served.store.readings().countOfJob(job.id()) == 1);
      assertEquals(2, served.json(path).get("measured").asInt());
    }
  }

  @WaitingTest
  void whatCannotBeStudiedIsRefusedAtOnceAndNamed() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      String one = served.post("/api/studies", plan(job.id(), 3, "[\"Ann\"]")).body();
      assertTrue(one.contains("operators"), one);
      String few = served.post("/api/studies", plan(job.id(), 1, "[\"Ann\", \"Bo\"]")).body();
      assertTrue(few.contains("\"parts\""), few);
      String twice = served.post("/api/studies", plan(job.id(), 3, "[\"Ann\", \"Ann\"]")).body();
      assertTrue(twice.contains("twice"), twice);
      assertEquals(404, served.get("/api/studies/9").statusCode());
      JsonNode size = served.json("/api/study-size?expected=10");
      assertTrue(size.get("says").asText().contains("readings"), size.toString());
      assertFalse(size.get("design").isNull());
    }
  }
}
