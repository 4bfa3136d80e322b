package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.web.http.Call;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A station is changed and removed while the service runs, over a real port and a real file. */
final class StationSettingsTest {
  private static final String SETTINGS = "/api/stations/A/settings";
  @TempDir Path directory;

  private static ObjectNode changed(Served served, String key, double value) throws Exception {
    ObjectNode body = (ObjectNode) served.json(SETTINGS);
    ((ObjectNode) body.at("/station/indicator")).put(key, value);
    return body;
  }

  @Test
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

  @Test
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

  @Test
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
