package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Job;
import org.chordlog.web.http.Json;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Spans, masters and targets that no bridge has or reaches are refused in words. */
final class ReachableTest {
  @TempDir Path directory;
  private Served served;

  @BeforeEach
  void open() {
    served = new Served(directory);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private static JsonNode fault(HttpResponse<String> answer) throws Exception {
    assertEquals(400, answer.statusCode(), answer::body);
    return Served.tree(answer).at("/faults/0");
  }

  /** 0.2: metres for mm. */
  @ParameterizedTest
  @ValueSource(strings = {"0.2", "1e9"})
  void aBridgeHasASpanThatCanBeLifted(String span) throws Exception {
    String bridge =
        "{\"name\": \"b\", \"spanMm\": %s, \"spanUncertaintyMm\": 0.02, \"footRadiusMm\": 0}";
    JsonNode fault = fault(served.post("/api/bridges", bridge.formatted(span)));
    assertEquals("spanMm", fault.get("field").asText());
    assertEquals("1 mm to 10000 mm", fault.get("allowed").asText());
    Ran ran = Ran.line("radius --depth 0.01 --span " + span);
    assertTrue(ran.err().contains("--span"), ran.err());
    assertTrue(ran.err().contains("is out of range; allowed: 1 mm to 10000 mm"), ran.err());
  }

  /** For wire; a station file that has such a bridge must go on to be read. */
  @Test
  void aBridgeForWireIsNarrow() throws Exception {
    String bridge =
        "{\"name\": \"w\", \"spanMm\": 1.5, \"spanUncertaintyMm\": 0.01, \"footRadiusMm\": 0}";
    assertEquals(201, served.post("/api/bridges", bridge).statusCode());
    Ran ran = Ran.line("radius --depth 0.1 --span 1.5");
    assertTrue(ran.err().isEmpty(), ran.err());
  }

  @Test
  void aMasterIsToldFromAFlatBySomeBridge() throws Exception {
    String master =
        "{\"name\": \"m\", \"face\": \"OUTER\", \"radiusMm\": 1e9, \"expandedUncertaintyMm\": 0}";
    JsonNode fault = fault(served.post("/api/masters", master));
    assertEquals("radiusMm", fault.get("field").asText());
    assertTrue(fault.get("problem").asText().contains("could tell it from a flat"), "" + fault);
    String csv = "name,face,radius_mm,expanded_uncertainty_mm\nm,outer,1000000000,0\n";
    String body = Json.shared().writeValueAsString(Map.of("csv", csv, "create", true));
    JsonNode row = fault(served.post("/api/masters/import", body));
    assertEquals("line 2, column radius_mm", row.get("field").asText());
    assertEquals(List.of(), served.store.gauges().masters());
  }

  @Test
  void aTargetIsToldFromAFlatByTheBridgeThatIsMounted() throws Exception {
    Job job = served.job();
    ObjectNode body = (ObjectNode) served.json("/api/jobs/" + job.id());
    ObjectNode asked = Json.shared().createObjectNode();
    for (String field : List.of("part", "station", "section", "measuredFace", "plan")) {
      asked.set(field, body.get(field));
    }
    asked.put("name", "wide").putObject("specification").put("face", "OUTER").put("targetMm", 1e9);
    JsonNode fault = fault(served.post("/api/jobs", asked.toString()));
    assertEquals("specification.targetMm", fault.get("field").asText());
    assertTrue(fault.get("problem").asText().contains("each piece would look flat"), "" + fault);
    String orders =
        Json.shared()
            .createObjectNode()
            .put("likeJobId", job.id())
            .put("csv", "order;target\nA;1000000000\n")
            .toString();
    String said = Served.tree(served.post("/api/orders", orders)).at("/orders/0/fault").asText();
    assertTrue(said.startsWith("target is too wide for the bridge"), said);
  }
}
