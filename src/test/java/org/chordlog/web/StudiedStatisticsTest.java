package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Once a study of the gauge is done, its figure is the gauge's scatter in the figures of jobs. */
final class StudiedStatisticsTest {
  @TempDir Path directory;

  private static JsonNode figure(JsonNode figures, String name) {
    for (JsonNode each : figures) {
      if (each.get("name").asText().equals(name)) {
        return each;
      }
    }
    throw new AssertionError("no figure " + name + " in " + figures);
  }

  @Test
  void theFigureOfTheStudyIsTakenOutAndSaysSo() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 40);
      String path = "/api/jobs/" + job.id() + "/statistics";
      JsonNode before = figure(served.json(path).get("figures"), "gaugeStandardDeviation");
      assertFalse(before.get("method").asText().contains("study"), before.toString());
      CompleteStudy.in(served.store, job);
      JsonNode after = figure(served.json(path).get("figures"), "gaugeStandardDeviation");
      JsonNode found = figure(served.json("/api/studies/1/result").get("figures"), "GRR");
      assertEquals(found.get("value").asDouble(), after.get("value").asDouble(), 1e-12);
      assertEquals(found.get("lower").asDouble(), after.get("lower").asDouble(), 1e-12);
      JsonNode lot = served.json("/api/jobs/" + job.id() + "/lots").get("lots").get(0);
      JsonNode ofLot = figure(lot.get("figures"), "gaugeStandardDeviation");
      assertEquals(after.get("value").asDouble(), ofLot.get("value").asDouble(), 1e-12);
      assertTrue(ofLot.get("method").asText().contains("by the gauge study"), ofLot.toString());
      String table = served.get(path + ".csv").body();
      assertTrue(table.contains("by the gauge study hoops in spring"), table);
    }
  }
}
