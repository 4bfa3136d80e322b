package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two jobs of 20 readings, 5 of the 40 flat: pooled by the API, and figures with their ground. */
final class ShortRunsTest {
  private static final String POOLED = "/api/machines/three-roll%20bender/short-runs";

  @TempDir Path directory;

  @Test
  void jobsOfAMachinePoolOnOneChart() throws Exception {
    try (Served served = new Served(directory)) {
      Job first = served.job();
      served.readings(first, 20);
      served.readings(served.job(), 20);
      JsonNode pooled = served.json(POOLED);
      assertEquals(35, pooled.get("count").asLong());
      pooled.get("figures").forEach(ShortRunsTest::grounded);
      assertFalse(pooled.get("charts").get("limits").isEmpty());
      assertEquals(1, pooled.get("charts").get("limits").get(0).get("phase").asInt());
      assertEquals("Nothing to compare yet", word(served.json(POOLED + "?jobs=1")));
      assertNotEquals("Nothing to compare yet", word(pooled));
      assertEquals(17, served.json(POOLED + "?jobs=1&basis=deviation").get("count").asLong());
      served.store.readings().add(new Exclusion(0, 1, true, "knocked", Some.T0, "me"));
      assertEquals(34, served.json(POOLED).get("count").asLong());
      JsonNode chart = served.json(POOLED + "/chart?basis=deviation");
      assertEquals(35, chart.get("places").size());
      assertTrue(chart.get("svg").asText().contains("<svg"));
      assertEquals(404, served.get(POOLED + "/chart?kind=mean").statusCode());
      assertEquals(400, served.get(POOLED + "?basis=none").statusCode());
    }
  }

  @Test
  void everyFigureOfAJobHasItsMethodAndThoseOfCapabilityTheirSource() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 60);
      JsonNode statistics = served.json("/api/jobs/" + job.id() + "/statistics?scope=job");
      statistics.get("figures").forEach(ShortRunsTest::grounded);
      for (String name : new String[] {"Cp", "Cpk", "Pp", "Ppk"}) {
        JsonNode figure = figure(statistics, name);
        assertTrue(figure.get("lower").asDouble() < figure.get("value").asDouble(), name);
        assertTrue(figure.get("upper").asDouble() > figure.get("value").asDouble(), name);
        assertFalse(figure.get("source").asText().isBlank(), name);
      }
    }
  }

  private static String word(JsonNode pooled) {
    return pooled.at("/statement/word").asText();
  }

  private static void grounded(JsonNode figure) {
    assertFalse(figure.get("name").asText().isBlank());
    assertFalse(figure.get("method").asText().isBlank(), figure.toString());
    assertTrue(figure.has("source") && figure.has("unit") && figure.has("lower"));
  }

  private static JsonNode figure(JsonNode statistics, String name) {
    for (JsonNode each : statistics.get("figures")) {
      if (each.get("name").asText().equals(name)) {
        return each;
      }
    }
    throw new AssertionError(name);
  }
}
