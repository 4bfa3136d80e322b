package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the API says of a job, its parts, its machine and its station. */
final class JobAtStationTest {
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

  private JsonNode overview() throws Exception {
    return served.json("/api/stations/A/overview");
  }

  @Test
  void aClosedJobsStationOffersTheNextOpenJob() throws Exception {
    Job next = served.job();
    Job closed = served.job();
    assertTrue(overview().get("nextJob").isNull());
    assertEquals(200, served.post("/api/jobs/" + closed.id() + "/close", "{}").statusCode());
    JsonNode after = overview();
    assertEquals(next.id(), after.at("/nextJob/id").asLong());
    assertTrue(after.get("findings").toString().contains("This job is closed"), after.toString());
    String body = "{\"jobId\": " + next.id() + "}";
    assertEquals(200, served.post("/api/stations/A/job", body).statusCode());
    assertEquals(next.id(), overview().at("/job/id").asLong());
    assertTrue(overview().get("nextJob").isNull());
  }

  @Test
  void jobStationAndMachineSayTheSame() throws Exception {
    Job job = served.job();
    served.readings(job, 60);
    JsonNode machine = served.json("/api/machines/three-roll%20bender");
    JsonNode statistics = served.json("/api/jobs/" + job.id() + "/statistics");
    assertEquals(machine.get("statement"), statistics.at("/verdicts/machine"));
    boolean moved = !machine.get("findings").isEmpty();
    assertEquals(moved, overview().get("findings").toString().contains("MACHINE_MOVED"));
  }

  @Test
  void lotsAndPassesAndSettingsOfTheCharts() throws Exception {
    Job job = served.job();
    served.readings(job, 30);
    String path = "/api/jobs/" + job.id();
    JsonNode lots = served.json(path + "/lots");
    assertEquals(1, lots.get("lots").size());
    assertEquals(job.materialLot(), lots.at("/lots/0/lot").asText(), "none recorded: the job's");
    JsonNode whole = served.json(path + "/statistics?scope=job");
    assertEquals(whole.get("count"), lots.at("/lots/0/readings"));
    assertEquals(
        whole.get("count"), served.json(path + "/statistics?scope=job&lot=lot+1").get("count"));
    assertEquals(0, served.json(path + "/statistics?scope=job&lot=B").get("count").asLong());
    JsonNode passes = served.json(path + "/passes");
    assertEquals(1, passes.get("meanPasses").asDouble());
    assertEquals(0, passes.get("shareRolledAgain").asDouble());
    JsonNode facts = served.json(path + "/chart-facts");
    assertTrue(facts.get("settings").asText().contains("(Nelson 1984)"));
    assertFalse(facts.get("characteristic").asText().isBlank());
  }
}
