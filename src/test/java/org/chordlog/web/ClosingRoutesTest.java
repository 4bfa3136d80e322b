package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.store.Some;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rings and arcs by the API: how they close, what a feature shows, pieces of a ring. */
final class ClosingRoutesTest {
  /** Quarter of a ring of 1800 mm. */
  private static final double QUARTER = Math.PI / 2 * 1800;

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

  /** c = 2R sin(S/2R) and the arc gap 2π(R − R₀): plane geometry of an arc of fixed length. */
  @Test
  void anArcAndARingSayHowTheyClose() throws Exception {
    Job arc = developed(2000.0, null);
    served.readings(arc, 12);
    JsonNode closing = served.json("/api/jobs/" + arc.id() + "/closing");
    double radius = closing.get("radiusMm").asDouble();
    assertEquals("LENGTH", closing.get("fixed").asText());
    assertEquals(
        2 * radius * Math.sin(2000 / (2 * radius)), value(closing, "chord from end to end"), 1e-9);
    assertEquals(4, closing.get("piece").asInt());
    Job ring = developed(null, 360.0);
    served.readings(ring, 12);
    JsonNode gap = served.json("/api/jobs/" + ring.id() + "/closing");
    double open = 2 * Math.PI * (gap.get("radiusMm").asDouble() - 1800);
    assertEquals(open, gap.get("features").get(0).get("valueMm").asDouble(), 1e-9);
  }

  @Test
  void whatCantCloseSaysSo() throws Exception {
    Job plain = served.job();
    assertEquals(404, served.get("/api/jobs/" + plain.id() + "/closing").statusCode());
    Job coil = developed(null, 720.0);
    HttpResponse<String> answer = served.get("/api/jobs/" + coil.id() + "/closing");
    assertEquals(400, answer.statusCode());
    assertTrue(answer.body().contains("more than a full turn"), answer::body);
  }

  /** An arc bent to 1806: h = R(1 − cos(S/2R)), plane geometry of an arc of fixed length. */
  @Test
  void whatWasMeasuredShowsTheRadius() throws Exception {
    Job arc = developed(QUARTER, null);
    double rise = 1806 * (1 - Math.cos(QUARTER / 2 / 1806));
    JsonNode shown =
        served.json(closing(arc) + "/radius?feature=rise&measuredMm=" + rise + "&uncertaintyMm=1");
    assertEquals(1806, shown.get("radiusMm").asDouble(), 1e-6);
    assertEquals(1806, shown.get("specifiedRadiusMm").asDouble(), 1e-6);
    assertEquals(1 / 0.26246715, shown.get("standardUncertaintyMm").asDouble(), 1e-3);
    Job ring = developed(null, 360.0);
    double gap = 2 * Math.PI * 6;
    JsonNode open = served.json(closing(ring) + "/radius?feature=gap&measuredMm=" + gap);
    assertEquals(1806, open.get("radiusMm").asDouble(), 1e-9);
  }

  /** κ = (2π − ΣSκ)/S of what is left: the turn that the bent pieces leave to it. */
  @Test
  void whatIsLeftOfARingIsBentToCloseIt() throws Exception {
    Job job = developed(QUARTER, null);
    served.readings(job, 12);
    JsonNode pieces = served.json(closing(job) + "/pieces");
    assertEquals(4, pieces.size());
    double turned = 0;
    for (int i = 1; i < 4; i++) {
      turned += QUARTER / pieces.get(i).get("radiusMm").asDouble();
    }
    JsonNode ring = served.json(closing(job) + "/ring?pieces=4&bent=1&bent=2&bent=3");
    double radius = ring.at("/rest/radiusMm").asDouble();
    assertEquals(QUARTER / (2 * Math.PI - turned), radius, 1e-6);
    assertEquals(1, ring.at("/rest/pieces").asInt());
    assertTrue(ring.get("joint").isNull());
    assertTrue(ring.at("/rest/standardUncertaintyMm").asDouble() > 0);
  }

  @Test
  void theBestPiecesOfARingAreChosen() throws Exception {
    Job job = developed(QUARTER, null);
    served.readings(job, 18);
    String all = "&bent=1&bent=2&bent=3&bent=4&bent=5&bent=6";
    JsonNode ring = served.json(closing(job) + "/ring?pieces=4" + all);
    assertEquals(4, ring.get("bent").size());
    double turned = 0;
    for (JsonNode each : ring.get("bent")) {
      turned += QUARTER / each.get("radiusMm").asDouble();
    }
    double gap = (2 * Math.PI - turned) * 1800;
    assertEquals(gap, ring.at("/joint/arcGapMm").asDouble(), 1e-6);
    JsonNode first = served.json(closing(job) + "/ring?pieces=4&bent=1&bent=2&bent=3&bent=4");
    double misfit = Math.hypot(gap, ring.at("/joint/openingMm").asDouble());
    assertTrue(
        misfit
            <= Math.hypot(
                first.at("/joint/arcGapMm").asDouble(), first.at("/joint/openingMm").asDouble()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "/ring?pieces=4&bent=9; bent; is not among the newest pieces with a radius",
        "/ring?pieces=1; pieces; is out of range",
        "/ring; pieces; is missing",
        "/radius?measuredMm=3; feature; is missing",
        "/radius?feature=gap&measuredMm=3; feature; is not a feature of an arc",
        "/radius?feature=chord; measuredMm; is missing",
        "/radius?feature=chord&measuredMm=2546&uncertaintyMm=-1; uncertaintyMm; is below zero",
        "/radius?feature=chord&measuredMm=1; measuredMm; no radius near the target"
      })
  void whatCantBeAnsweredIsNamed(String asked, String field, String problem) throws Exception {
    Job job = developed(QUARTER, null);
    served.readings(job, 6);
    HttpResponse<String> answer = served.get(closing(job) + asked);
    assertEquals(400, answer.statusCode(), answer::body);
    assertTrue(answer.body().contains("\"" + field + "\""), answer::body);
    assertTrue(answer.body().contains(problem), answer::body);
  }

  @Test
  void piecesCutToTheirAngleMakeARingAnyway() throws Exception {
    Job job = developed(null, 90.0);
    served.readings(job, 6);
    HttpResponse<String> answer = served.get(closing(job) + "/ring?pieces=4&bent=1");
    assertEquals(400, answer.statusCode());
    assertTrue(answer.body().contains("make a ring at any radius"), answer::body);
  }

  private static String closing(Job job) {
    return "/api/jobs/" + job.id() + "/closing";
  }

  private Job developed(@Nullable Double lengthMm, @Nullable Double degrees) {
    Job job = Some.job("rings", "three-roll bender");
    return served
        .store
        .jobs()
        .add(job.withDetails(new OrderDetails(null, null, lengthMm, degrees)), "tester");
  }

  private static double value(JsonNode closing, String feature) {
    List<JsonNode> all =
        StreamSupport.stream(closing.get("features").spliterator(), false).toList();
    return all.stream()
        .filter(each -> each.get("name").asText().equals(feature))
        .findFirst()
        .orElseThrow()
        .get("valueMm")
        .asDouble();
  }
}
