package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.EvenReads;
import org.chordlog.WaitingTest;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.web.http.Call;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** A station is changed and removed while the service runs, over a real port and a real file. */
@Tag("slow")
final class StationSettingsTest {
  private static final String SETTINGS = "/api/stations/A/settings";
  private static final int HELD = 150;
  @TempDir Path directory;

  private static ObjectNode changed(Served served, String key, double value) throws Exception {
    ObjectNode body = (ObjectNode) served.json(SETTINGS);
    ((ObjectNode) body.at("/station/indicator")).put(key, value);
    return body;
  }

  @WaitingTest
  void aChangedStationReadsOnWithItsJob() throws Exception {
    try (Served served = new Served(directory)) {
      long job = served.job().id();
      String body = changed(served, "permissibleErrorMm", 0.004).toString();
      assertEquals(200, served.put(SETTINGS, body).statusCode());
      Await.until(() -> served.stations.status("A").link() == LinkState.OPEN);
      Await.until(() -> served.stations.status("A").counts().samples() > 10);
      assertEquals(job, served.stations.status("A").jobId());
      assertEquals(served.stations.settings(), StationFile.read(served.stationFile));
      assertEquals(0.004, served.stations.settings().get(0).indicator().permissibleErrorMm());
    }
  }

  @WaitingTest
  void whatCanNotBeIsRefusedByItsFieldAndTheStationReadsOn() throws Exception {
    try (Served served = new Served(directory)) {
      served.job();
      String before = Files.readString(served.stationFile);
      JsonNode refused =
          Served.tree(served.put(SETTINGS, changed(served, "resolutionMm", -1).toString()));
      assertTrue(refused.at("/faults/0/field").asText().startsWith("indicator.resolutionMm"));
      ObjectNode machine = (ObjectNode) served.json(SETTINGS);
      ((ObjectNode) machine.get("station")).put("machine", "other");
      assertEquals(
          "machine",
          Served.tree(served.put(SETTINGS, machine.toString())).at("/faults/0/field").asText());
      ObjectNode name = (ObjectNode) served.json(SETTINGS);
      ((ObjectNode) name.get("station")).put("name", "B");
      assertEquals(400, served.put(SETTINGS, name.toString()).statusCode());
      assertEquals(before, Files.readString(served.stationFile));
      assertEquals(LinkState.OPEN, served.stations.status("A").link());
    }
  }

  private static void direction(Served served, @Nullable String direction) throws Exception {
    ObjectNode body = (ObjectNode) served.json(SETTINGS);
    ((ObjectNode) body.get("station")).put("direction", direction);
    HttpResponse<String> answer = served.put(SETTINGS, body.toString());
    assertEquals(200, answer.statusCode(), answer.body());
    Await.until(() -> served.stations.status("A").link() == LinkState.OPEN);
  }

  /** Shows that until it was at rest for longer than a zero needs. */
  private static void holds(Served served, double mm) throws Exception {
    served.indicator.show(mm);
    EvenReads.await(() -> served.stations.status("A").counts().samples(), HELD);
  }

  private static JsonNode zero(Served served, int status) throws Exception {
    HttpResponse<String> answer = served.post("/api/stations/A/zero", "");
    assertEquals(status, answer.statusCode(), answer.body());
    return Served.tree(answer);
  }

  /** It shows 3 in free air, 0 on the flat; nobody has said that it counts down. */
  @WaitingTest
  void noZeroIsTakenBeforeTheDirectionIsSaidAndThenNoneInFreeAir() throws Exception {
    try (Served served = new Served(directory)) {
      served.job();
      direction(served, null);
      for (double shown : new double[] {3, 0, 3}) {
        holds(served, shown);
        JsonNode fault = zero(served, 400).at("/faults/0");
        assertEquals("direction", fault.get("field").asText());
        assertTrue(fault.get("allowed").asText().contains("counts_down where it falls"));
      }
      assertTrue(served.store.gauges().latestZero("A").isEmpty());
      direction(served, "counts_down");
      for (double shown : new double[] {3, 0, 3}) {
        holds(served, shown);
        boolean flat = shown == 0;
        JsonNode answer = zero(served, flat ? 200 : 400);
        assertEquals(flat ? "" : "plunger", answer.at("/faults/0/field").asText());
      }
      assertEquals(0, served.store.gauges().latestZero("A").orElseThrow().valueNm());
      assertEquals(served.stations.settings(), StationFile.read(served.stationFile));
    }
  }

  /** As one that was written before the direction was asked for. */
  @WaitingTest
  void aStationThatHasItsZeroGoesOnWithoutADirection() throws Exception {
    try (Served served = new Served(directory)) {
      served.job();
      served.zeroAndFree();
      direction(served, null);
      holds(served, TerminalIndicator.FREE_MM);
      holds(served, 0);
      zero(served, 200);
    }
  }

  @WaitingTest
  void aRemovedStationIsGoneAndItsRecordsStay() throws Exception {
    try (Served served = new Served(directory)) {
      long job = served.job().id();
      assertEquals(
          204, served.send("DELETE", "/api/stations/A", "", Call.BY, "tester").statusCode());
      assertEquals(404, served.get(SETTINGS).statusCode());
      assertEquals(0, served.stations.statuses().size());
      assertEquals(200, served.get("/api/jobs/" + job).statusCode());
      assertEquals(0, StationFile.read(served.stationFile).size());
    }
  }
}
