package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.radius.Chord;

/** Stands the bridge on pieces as a study asks for it, over the real pseudo-terminal. */
final class StudyHands {
  private static final double SPAN_MM = 200;
  private static final double FOOT_MM = 5;
  private static final double CENTROID_MM = 30.15;

  private final Served served;
  private final String path;

  /** {@code path} is that of the study. */
  StudyHands(Served served, String path) {
    this.served = served;
    this.path = path;
  }

  /** Plans a study, starts it, and is ready to measure. */
  static StudyHands start(Served served, String plan) throws Exception {
    JsonNode planned = posted(served, "/api/studies", plan);
    StudyHands hands = new StudyHands(served, "/api/studies/" + planned.get("id").asLong());
    hands.become("RUNNING");
    return hands;
  }

  static JsonNode posted(Served served, String path, String body) throws Exception {
    var answer = served.post(path, body);
    assertTrue(answer.statusCode() < 300, path + ": " + answer.body());
    return Served.tree(answer);
  }

  /** Depth on a piece by the radius of its centreline. */
  static double depthMm(double centrelineMm) {
    return onMasterMm(centrelineMm + CENTROID_MM);
  }

  /** Depth on a convex master. */
  static double onMasterMm(double radiusMm) {
    return Chord.depthMm(1 / radiusMm, SPAN_MM, FOOT_MM);
  }

  String path() {
    return path;
  }

  JsonNode study() throws Exception {
    return served.json(path);
  }

  JsonNode next() throws Exception {
    return study().get("next");
  }

  void become(String state) throws Exception {
    posted(served, path + "/state", "{\"state\": \"" + state + "\"}");
  }

  /** One contact that the study takes for its next step. */
  void touch(double depthMm) throws Exception {
    int before = study().get("measured").asInt();
    int step = step();
    served.indicator.show(depthMm);
    Await.until(() -> step() != step, () -> served.json("/api/stations/A"));
    free();
    Await.until(() -> study().get("measured").asInt() == before + 1);
  }

  /** One contact that is refused for that reason. */
  void refused(double depthMm, String reason) throws Exception {
    int before = study().get("measured").asInt();
    served.indicator.show(depthMm);
    Await.until(
        () -> served.json("/api/stations/A").get("rejections").has(reason),
        () -> served.json("/api/stations/A"));
    free();
    assertEquals(before, study().get("measured").asInt());
  }

  /** The step that the station measures next. */
  private int step() {
    return Objects.requireNonNull(served.stations.status("A").place().study()).step();
  }

  void free() throws Exception {
    served.indicator.show(TerminalIndicator.FREE_MM);
    Await.until(() -> served.free());
  }

  JsonNode result() throws Exception {
    return served.json(path + "/result");
  }

  static JsonNode figure(JsonNode result, String name) {
    for (JsonNode each : result.get("figures")) {
      if (each.get("name").asText().equals(name)) {
        return each;
      }
    }
    throw new AssertionError("no figure " + name);
  }

  static void contains(JsonNode figure, double truth) {
    double lower = figure.get("lower").asDouble();
    double upper = figure.get("upper").isNull() ? 1e9 : figure.get("upper").asDouble();
    assertTrue(lower <= truth && truth <= upper, truth + " is not in " + figure);
    assertEquals("mm", figure.get("unit").asText());
  }
}
