package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The measuring process (ISO 22514-7, from memory) put together from studies of one gauge. */
final class StudiedProcessTest {
  @TempDir Path directory;
  private Served served;
  private DoneStudies studies;
  private GaugeStudy pieces;

  @BeforeEach
  void serve() {
    served = new Served(directory);
    studies = new DoneStudies(served.store);
    pieces = studies.onPieces(Kind.CROSSED, 5, List.of(), List.of("Ann", "Bo", "Cy"));
  }

  @AfterEach
  void stop() {
    served.close();
  }

  private JsonNode result(GaugeStudy study) throws Exception {
    return served.json("/api/studies/" + study.id() + "/result");
  }

  private static double value(JsonNode told, String figure) {
    return StudyHands.figure(told, figure).get("value").asDouble();
  }

  private double nominalMm() {
    return pieces.subject().specification().targetMm();
  }

  @Test
  void withoutAStudyOnAMasterNothingIsSaidOfTheProcess() throws Exception {
    assertTrue(result(pieces).get("process").isNull());
  }

  /** Uncertainties add up as variances, and Q is four of them over the tolerance. */
  @Test
  void contributionsOfPiecesAndMasterAddUp() throws Exception {
    GaugeStudy master = studies.onMasters(Kind.TYPE1, 1, 30);
    assertTrue(result(master).get("process").isNull(), "told with the pieces");
    JsonNode process = result(pieces).get("process");
    assertEquals(
        List.of(
            pieces.name() + " (pieces and operators)",
            master.name() + " (one master against the tolerance)"),
        List.of(process.get("from").get(0).asText(), process.get("from").get(1).asText()));
    double scale = Math.pow(nominalMm() / 1800, 2);
    JsonNode onMaster = result(master);
    double bias = Math.abs(value(onMaster, "bias")) / Math.sqrt(3) * scale;
    assertEquals(bias, value(process, "u_BI"), 1e-6 * bias);
    double repeats = value(onMaster, "standardDeviation") * scale;
    assertEquals(repeats, value(process, "u_EVR"), 1e-6 * repeats);
    assertEquals(0.1 * scale, value(process, "u_CAL"), 1e-6, "U of 0.2 mm, k = 2");
    double own = Math.max(repeats, value(process, "u_RE"));
    double system = Math.sqrt(bias * bias + 0.01 * scale * scale + own * own);
    assertEquals(system, value(process, "u_MS"), 1e-6 * system);
    assertEquals(value(result(pieces), "AV"), value(process, "u_AV"), 1e-9);
    double width =
        1 / Objects.requireNonNull(pieces.subject().specification().lowerLimitMm())
            - 1 / Objects.requireNonNull(pieces.subject().specification().upperLimitMm());
    double tolerance = width * nominalMm() * nominalMm();
    assertEquals(400 * value(process, "u_MP") / tolerance, value(process, "Q_MP"), 1e-6, "percent");
  }

  @Test
  void theStepOfTheIndicatorAndTheBiasOverMastersAreToldInRadius() throws Exception {
    GaugeStudy master = studies.onMasters(Kind.BIAS, 1, 12);
    GaugeStudy masters = studies.onMasters(Kind.LINEARITY, 4, 5);
    assertTrue(master.id() < masters.id());
    JsonNode process = result(pieces).get("process");
    assertEquals(3, process.get("from").size());
    double stepMm = Some.setUp(Some.bridge("200")).indicator().resolutionMm();
    double perDepth = 8 * nominalMm() * nominalMm() / (200 * 200); // of a shallow arc
    double step = perDepth * stepMm / Math.sqrt(12);
    assertEquals(step, value(process, "u_RE"), 0.1 * step);
    double most = perDepth * DoneStudies.BIAS_MM / Math.sqrt(3);
    assertEquals(most, value(process, "u_LIN"), 0.2 * most);
    assertTrue(process.get("holds").asText().contains("several masters"));
  }

  @Test
  void rangesAreBesideTheAnalysisOfVariance() throws Exception {
    JsonNode alternatives = result(pieces).get("alternatives");
    JsonNode ranges = alternatives.get(alternatives.size() - 1);
    assertEquals(
        "by averages and ranges, which do not see an interaction", ranges.get("name").asText());
    double variances = value(result(pieces), "GRR");
    assertEquals(variances, value(ranges, "GRR"), 0.3 * variances);
  }
}
