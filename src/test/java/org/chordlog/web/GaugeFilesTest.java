package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Calibration.Fitted;
import org.chordlog.measure.Face;
import org.chordlog.measure.Master;
import org.chordlog.measure.Recorded;
import org.chordlog.web.http.Json;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Masters and calibrations as files, by command and API of a running service. */
final class GaugeFilesTest {
  private static final long YEAR_MICROS = 365L * 86_400_000_000L;

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

  private JsonNode sent(String path, String csv, boolean create, int status) throws Exception {
    String body = Json.shared().writeValueAsString(Map.of("csv", csv, "create", create));
    var answer = served.post(path, body);
    assertEquals(status, answer.statusCode(), answer.body());
    return Served.tree(answer);
  }

  private Ran command(String line) throws Exception {
    return Ran.line(line + " --by tester --service http://127.0.0.1:" + served.web.port());
  }

  @Test
  void mastersGoOutAndComeInTheSame() throws Exception {
    served
        .store
        .gauges()
        .add(new Master(0, "ring, \"old\"", Face.OUTER, 1800.125, 0.2, 0.75), "me");
    served.store.gauges().add(new Master(0, "shell", Face.INNER, 998.0004, 0), "me");
    Path file = directory.resolve("masters.csv");
    assertEquals("2 masters in " + file, command("masters --export " + file).out().strip());
    String csv = Files.readString(file);
    assertEquals(served.get("/api/masters.csv").body(), csv);
    try (Served other = new Served(directory.resolve("other"))) {
      Ran ran =
          Ran.line(
              "masters --by Bo --import "
                  + file
                  + " --service http://127.0.0.1:"
                  + other.web.port());
      assertEquals(0, ran.code(), ran.err());
      assertTrue(ran.out().contains("masters added: 2"), ran.out());
      assertEquals(csv, other.get("/api/masters.csv").body());
      assertEquals(
          List.of("master shell by Bo, from a file", "master ring, \"old\" by Bo, from a file"),
          onRecord(other).subList(0, 2));
    }
    JsonNode again = sent("/api/masters/import", csv, true, 200);
    assertEquals(0, again.get("added").asInt());
    assertEquals(2, served.store.gauges().masters().size());
  }

  /** As it would be stored, not as it was written: a slip of the pen is seen. */
  @Test
  void aLookShowsWhatWouldBeStored() throws Exception {
    String head = "name;face;radius_mm;expanded_uncertainty_mm;check_limit_mm\n";
    String csv = "\uFEFFsep=;\n" + head + "good;OUTER;1500,5;\u00a00,1;;\n";
    Path file = Files.writeString(directory.resolve("masters.csv"), csv);
    Ran looked = command("masters --look --import " + file);
    assertEquals(
        "line 3: good, new: outer face, radius 1500.5 mm, expanded uncertainty (k = 2) 0.1 mm, no"
            + " limit for checks",
        looked.out().lines().findFirst().orElse(looked.toString()));
    assertEquals(0, served.store.gauges().masters().size());
  }

  @Test
  void timesOfCertificatesAreReadAsPeopleWriteThemOrRefused() throws Exception {
    String row =
        """
        station;bridge;taken_utc;due_utc;taken_by;span_mm;u_span_mm
        A;long;%s;%s;lab;200,02;0,004
        """;
    String days = row.formatted("1.3.2026 08:00", "2027-03-01");
    JsonNode looked = sent("/api/calibrations/import", days, false, 200).at("/rows/0/stored");
    assertEquals(
        "taken 2026-03-01 08:00 UTC by lab, due 2027-03-01 00:00 UTC, span 200.02 mm, standard"
            + " uncertainty 0.004 mm",
        looked.asText());
    String slashes = row.formatted("2026-03-01 08:00", "03/01/2027");
    JsonNode fault = sent("/api/calibrations/import", slashes, true, 400).at("/faults/0");
    assertEquals("line 2, column due_utc", fault.get("field").asText());
    assertTrue(fault.get("problem").asText().contains("day or month first"), fault.toString());
  }

  @Test
  void aFaultyRowIsNamedByLineAndColumnAndNothingIsAdded() throws Exception {
    served.store.gauges().add(new Master(0, "ring", Face.OUTER, 1800, 0.2), "me");
    String csv =
        """
        name;face;radius_mm;expanded_uncertainty_mm;check_limit_mm
        good;outer;1500,5;0,1;
        bad;outer;long;0,1;
        flat;centre;1500;0,1;
        ring;outer;1700;0,2;
        ;outer;1500;0,1;
        less;outer;1500;-1;
        """;
    JsonNode problem = sent("/api/masters/import", csv, true, 400);
    List<String> fields =
        problem.get("faults").findValues("field").stream().map(JsonNode::asText).toList();
    assertEquals(
        List.of(
            "line 3, column radius_mm",
            "line 4, column face",
            "line 5, column name",
            "line 6, column name",
            "line 7, column expanded_uncertainty_mm"),
        fields);
    assertEquals(1, served.store.gauges().masters().size());
    Path file = Files.writeString(directory.resolve("bad.csv"), csv);
    Ran ran = command("masters --import " + file);
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("line 3, column radius_mm"), ran.err());
    String unknown = sent("/api/masters/import", "name,radius\nx,1\n", true, 400).toString();
    assertTrue(unknown.contains("is not a column of a file of masters"), unknown);
  }

  /** What was changed by whom and why, the newest first. */
  private static List<String> onRecord(Served of) throws Exception {
    List<String> changes = new ArrayList<>();
    of.json("/api/changes")
        .get("items")
        .forEach(
            each ->
                changes.add(
                    each.get("what").asText()
                        + " by "
                        + each.get("by").asText()
                        + ", "
                        + each.get("why").asText()));
    return changes;
  }

  @Test
  void aMasterAddedAtAPageIsOnRecord() throws Exception {
    String ring =
        """
        {"name": "ring", "face": "OUTER", "radiusMm": 1800, "expandedUncertaintyMm": 0.2}\
        """;
    var answer = served.post("/api/masters", ring);
    assertEquals(201, answer.statusCode(), answer.body());
    JsonNode change = served.json("/api/changes").get("items").get(0);
    assertEquals("master ring", change.get("what").asText());
    assertEquals("new", change.get("why").asText());
    assertTrue(change.get("to").asText().contains("1800"), change.toString());
    assertFalse(change.get("by").asText().isBlank());
  }

  private Calibration calibrated(long takenMicros, double spanMm) {
    Bridge bridge = served.store.gauges().bridges().get(0);
    List<List<Double>> covariance =
        List.of(
            List.of(1.21e-4, -3.1e-7, 0.0), List.of(-3.1e-7, 2.5e-7, 0.0), List.of(0.0, 0.0, 0.0));
    return new Calibration(
        0,
        "A",
        bridge.id(),
        new Fitted(spanMm, 0.0012, 5, covariance, 4),
        new Recorded(takenMicros, "Greta"),
        takenMicros + YEAR_MICROS,
        "two masters, \"ring\" and shell");
  }

  @Test
  void calibrationsGoOutAndComeInTheSame() throws Exception {
    long now = System.currentTimeMillis() * 1_000L;
    served.store.gauges().add(calibrated(now - 2 * YEAR_MICROS, 200.011));
    served.store.gauges().add(calibrated(now - YEAR_MICROS / 2, 200.017));
    String csv = served.get("/api/calibrations.csv").body();
    assertEquals(csv, command("calibrations").out());
    try (Served other = new Served(directory.resolve("other"))) {
      String body = Json.shared().writeValueAsString(Map.of("csv", csv, "create", true));
      assertEquals(
          2, Served.tree(other.post("/api/calibrations/import", body)).get("added").asInt());
      assertEquals(csv, other.get("/api/calibrations.csv").body());
      JsonNode inForce = other.json("/api/stations/A/gauge").get("calibration");
      assertEquals(200.017, inForce.get("spanMm").asDouble());
    }
    assertEquals(0, sent("/api/calibrations/import", csv, true, 200).get("added").asInt());
  }

  @Test
  void aCertificateIsTakenOrRefusedByLineAndColumn() throws Exception {
    String head = "station,bridge,taken_utc,due_utc,taken_by,span_mm,u_span_mm\n";
    String good = "A,long,2026-03-01T08:00:00Z,2027-03-01T00:00:00Z,laboratory 17,200.02,0.004\n";
    JsonNode looked = sent("/api/calibrations/import", head + good, false, 200);
    assertEquals(0, looked.get("added").asInt());
    assertEquals(1, sent("/api/calibrations/import", head + good, true, 200).get("added").asInt());
    assertTrue(onRecord(served).get(0).startsWith("calibration of A by "), "who brought it");
    JsonNode inForce = served.json("/api/stations/A/gauge").get("calibration");
    assertEquals("laboratory 17", inForce.get("takenBy").asText());
    String bad =
        head
            + "B,long,2026-03-02T08:00:00Z,2027-03-01T00:00:00Z,x,200.02,0.004\n"
            + "A,short,2026-03-02T08:00:00Z,2027-03-01T00:00:00Z,x,200.02,0.004\n"
            + "A,long,yesterday,2027-03-01T00:00:00Z,x,200.02,0.004\n"
            + "A,long,2026-03-02T08:00:00Z,2025-03-01T00:00:00Z,x,200.02,0.004\n"
            + "A,long,2026-02-01T08:00:00Z,2027-03-01T00:00:00Z,x,200.02,0.004\n"
            + "A,long,2026-03-02T08:00:00Z,2027-03-01T00:00:00Z,x,250,0.004\n"
            + "A,long,2026-03-02T08:00:00Z,2027-03-01T00:00:00Z,x,200.02,\n"
            + "A,long,2099-03-02T08:00:00Z,2100-03-01T00:00:00Z,x,200.02,0.004\n"
            + "A,long,2026-03-01T08:00:00Z,2027-03-01T00:00:00Z,x,200.05,0.004\n";
    List<String> fields =
        sent("/api/calibrations/import", bad, true, 400).get("faults").findValues("field").stream()
            .map(JsonNode::asText)
            .toList();
    assertEquals(
        List.of(
            "line 2, column station",
            "line 3, column bridge",
            "line 4, column taken_utc",
            "line 5, column due_utc",
            "line 6, column taken_utc",
            "line 7, column span_mm",
            "line 8, column u_span_mm",
            "line 9, column taken_utc",
            "line 10, column span_mm"),
        fields);
    assertEquals(1, served.store.gauges().calibrations(10).size());
  }
}
