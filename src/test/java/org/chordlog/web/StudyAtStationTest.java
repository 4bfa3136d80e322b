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
import org.chordlog.measure.Job;
import org.chordlog.radius.Chord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Studies done at a station over a real pseudo-terminal, step by step as the service asks for them,
 * by virtual operators of known bias and scatter.
 */
final class StudyAtStationTest {
  private static final double SPAN_MM = 200;
  private static final double FOOT_MM = 5;
  private static final double CENTROID_MM = 30.15;
  private static final double SCATTER_MM = 0.004;
  private static final Map<String, Double> BIAS_MM = Map.of("Ann", -0.006, "Bo", 0.0, "Cy", 0.006);

  @TempDir Path directory;
  private final SplittableRandom random = new SplittableRandom(20_261_126);

  private static double depthMm(double centrelineMm) {
    return Chord.depthMm(1 / (centrelineMm + CENTROID_MM), SPAN_MM, FOOT_MM);
  }

  private static double pieceMm(String name) {
    return 1788 + 4.0 * Integer.parseInt(name);
  }

  private static JsonNode posted(Served served, String path, String body) throws Exception {
    var answer = served.post(path, body);
    assertTrue(answer.statusCode() < 300, path + ": " + answer.body());
    return Served.tree(answer);
  }

  private static String plan(long job, int parts, String operators) {
    List<String> names = IntStream.rangeClosed(1, parts).mapToObj(i -> "\"" + i + "\"").toList();
    return """
        {"station": "A", "name": "hoops", "kind": "CROSSED", "parts": %s, "operators": %s,
         "repeats": 2, "jobId": %d, "seed": 7}"""
        .formatted(names, operators, job);
  }

  /** The operator whom the service names stands the bridge on the piece it names. */
  private void step(Served served, String path) throws Exception {
    JsonNode next = served.json(path).get("next");
    double bias = Objects.requireNonNull(BIAS_MM.get(next.get("operator").asText()));
    double depth = depthMm(pieceMm(next.get("part").asText()));
    touch(served, path, depth + bias + SCATTER_MM * random.nextGaussian());
  }

  private static void touch(Served served, String path, double depthMm) throws Exception {
    int before = served.json(path).get("measured").asInt();
    int step = step(served);
    served.indicator.show(depthMm);
    Await.until(() -> step(served) != step);
    free(served);
    Await.until(() -> served.json(path).get("measured").asInt() == before + 1);
  }

  /** The step that the station measures next. */
  private static int step(Served served) {
    return Objects.requireNonNull(served.stations.status("A").place().study()).step();
  }

  private static void free(Served served) throws Exception {
    served.indicator.show(TerminalIndicator.FREE_MM);
    Await.until(() -> served.free());
  }

  @Test
  void threeOperatorsAreFoundAsTheyAre() throws Exception {
    String path;
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.zeroAndFree();
      String all = "[\"Ann\", \"Bo\", \"Cy\"]";
      JsonNode planned = posted(served, "/api/studies", plan(job.id(), 5, all));
      path = "/api/studies/" + planned.get("id").asLong();
      posted(served, path + "/state", "{\"state\": \"RUNNING\"}");
      for (int i = 0; i < 12; i++) {
        step(served, path);
      }
      assertEquals(400, served.get(path + "/result").statusCode(), "values stay hidden");
      assertEquals(400, served.get(path + "/measurements.csv").statusCode());
      assertEquals(400, served.get(path + "/charts/study-readings").statusCode());
    }
    try (Served served = new Served(directory)) { // a restart in the middle
      assertEquals("RUNNING", served.json(path).get("state").asText());
      assertEquals(12, served.json(path).get("measured").asInt());
      free(served);
      for (int i = 12; i < 30; i++) {
        step(served, path);
      }
      assertTrue(served.json(path).get("next").isNull());
      result(served.json(path + "/result"));
      assertEquals(0, served.store.readings().countOfJob(1), "no reading of the job");
      posted(served, path + "/state", "{\"state\": \"DONE\"}");
      assertTrue(served.json("/api/stations/A").get("study").isNull());
    }
  }

  private static void result(JsonNode result) {
    double nominal = 1800;
    double slope = (depthMm(nominal - 1) - depthMm(nominal + 1)) / 2;
    contains(figure(result, "EV"), SCATTER_MM / slope);
    double squares = BIAS_MM.values().stream().mapToDouble(b -> b * b).sum();
    contains(figure(result, "AV"), Math.sqrt(squares / 2) / slope);
    List<Double> radii =
        new ArrayList<>(IntStream.rangeClosed(1, 5).mapToObj(i -> pieceMm("" + i)).toList());
    double mean = radii.stream().mapToDouble(r -> r).average().orElseThrow();
    double variance = radii.stream().mapToDouble(r -> (r - mean) * (r - mean)).sum() / 4;
    contains(figure(result, "PV"), Math.sqrt(variance));
    assertEquals("FAILS", result.get("verdict").asText(), "24 mm of tolerance for such hands");
    assertEquals(30, result.get("measurements").size());
    assertTrue(result.get("budget").get("ratio").asDouble() > 1.5, "operators are in no budget");
  }

  private static JsonNode figure(JsonNode result, String name) {
    for (JsonNode each : result.get("figures")) {
      if (each.get("name").asText().equals(name)) {
        return each;
      }
    }
    throw new AssertionError("no figure " + name);
  }

  private static void contains(JsonNode figure, double truth) {
    double lower = figure.get("lower").asDouble();
    double upper = figure.get("upper").isNull() ? 1e9 : figure.get("upper").asDouble();
    assertTrue(lower <= truth && truth <= upper, truth + " is not in " + figure);
    assertEquals("mm", figure.get("unit").asText());
  }

  @Test
  void aSpoiltMeasurementIsRepeatedAndAPauseGivesTheStationBackToItsJob() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.zeroAndFree();
      JsonNode planned = posted(served, "/api/studies", plan(job.id(), 2, "[\"Ann\", \"Bo\"]"));
      String path = "/api/studies/" + planned.get("id").asLong();
      posted(served, path + "/state", "{\"state\": \"RUNNING\"}");
      step(served, path);
      step(served, path);
      JsonNode second = served.json(path).get("lastMeasurementId");
      JsonNode again = posted(served, path + "/measure-again", "{\"reason\": \"slipped\"}");
      assertEquals(2, again.get("next").get("step").asInt());
      step(served, path);
      assertNotEquals(second, served.json(path).get("lastMeasurementId"));
      served.indicator.show(depthMm(650)); // far from any piece of the study
      Await.until(
          () -> served.json("/api/stations/A").get("rejections").has("FAR_FROM_TARGET"),
          () -> served.json("/api/stations/A"));
      assertEquals(2, served.json(path).get("measured").asInt());
      free(served);
      posted(served, path + "/state", "{\"state\": \"PAUSED\", \"why\": \"weekend\"}");
      served.indicator.show(depthMm(1800));
      Await.until(() -> served.store.readings().countOfJob(job.id()) == 1);
      assertEquals(2, served.json(path).get("measured").asInt());
    }
  }

  @Test
  void whatCannotBeStudiedIsRefusedAtOnceAndNamed() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      String one = served.post("/api/studies", plan(job.id(), 3, "[\"Ann\"]")).body();
      assertTrue(one.contains("operators"), one);
      String few = served.post("/api/studies", plan(job.id(), 1, "[\"Ann\", \"Bo\"]")).body();
      assertTrue(few.contains("parts"), few);
      String twice = served.post("/api/studies", plan(job.id(), 3, "[\"Ann\", \"Ann\"]")).body();
      assertTrue(twice.contains("twice"), twice);
      assertEquals(404, served.get("/api/studies/9").statusCode());
      JsonNode size = served.json("/api/study-size?expected=10");
      assertTrue(size.get("says").asText().contains("readings"), size.toString());
      assertFalse(size.get("design").isNull());
    }
  }
}
