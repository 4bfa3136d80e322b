package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.store.Some;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sqlite.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A damaged record is left out and named, on the page, in the health and by the audit. */
final class DamagedRecordsTest {
  @TempDir Path directory;

  private void change(String sql) throws Exception {
    String url = "jdbc:sqlite:" + directory.resolve(SqliteStore.FILE_NAME);
    try (var connection = DriverManager.getConnection(url);
        var statement = connection.createStatement()) {
      assertTrue(statement.executeUpdate(sql) > 0);
    }
  }

  /** All that the front pages and the job's page ask for. */
  private static void everythingIsAnswered(Served served, long job) throws Exception {
    for (String path :
        List.of(
            "/api/overview",
            "/api/attention",
            "/api/machines",
            "/api/jobs",
            "/api/jobs/" + job,
            "/api/jobs/" + job + "/readings",
            "/api/jobs/" + job + "/statistics",
            "/api/jobs/" + job + "/events",
            "/api/jobs/" + job + "/readings.csv",
            "/api/jobs/" + job + "/report.pdf")) {
      assertEquals(200, served.get(path).statusCode(), path);
    }
  }

  private static String health(Served served) throws Exception {
    return Served.tree(served.get("/health")).get("reasons").toString();
  }

  @Test
  void aDamagedReadingIsLeftOutAndAllOthersAreThere() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 30);
      change("UPDATE reading SET decision = 'CONFORNS' WHERE id = 7");
      everythingIsAnswered(served, job.id());
      JsonNode page = served.json("/api/jobs/" + job.id() + "/readings?limit=10");
      assertEquals(10, page.get("items").size(), "another one stands in for it");
      assertEquals(29, served.store.readings().ofJob(job.id(), 0, 100).size());
      assertTrue(health(served).contains("reading 7 can't be read"), health(served));
      JsonNode attention = served.json("/api/attention").get(0);
      String words = attention.get("words").toString();
      assertTrue(words.contains("Reading 7 can't be read (CONFORNS is unknown)"), words);
      assertEquals(503, served.get("/api/readings/7/set-up").statusCode());
    }
    assertTrue(Stores.files(directory).audit().toString().contains("reading 7"));
  }

  @Test
  void aDamagedPlanTakesNoOtherJobAwayAndTheServiceStarts() throws Exception {
    long damaged;
    try (Served served = new Served(directory)) {
      Job job = served.job();
      damaged = job.id();
      served.readings(job, 30);
      Job other = served.store.jobs().add(Some.job("other", job.machine()), "tester");
      served.readings(other, 3);
    }
    change("UPDATE job SET plan = replace(plan, 'positions', 'positionz') WHERE id = " + damaged);
    try (Served served = new Served(directory.resolve("."))) {
      everythingIsAnswered(served, damaged + 1);
      var refused = served.get("/api/jobs/" + damaged);
      assertEquals(503, refused.statusCode());
      String type = Served.tree(refused).get("type").asText();
      assertEquals("/problems/damaged-record", type, "pages go by it");
      assertTrue(health(served).contains("job 1 can't be read"), health(served));
      assertEquals(damaged, served.json("/api/attention").get(0).get("jobId").longValue());
    }
    assertTrue(Stores.files(directory).audit().toString().contains("job 1"));
  }

  @Test
  void aDamagedEventIsLeftOut() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 3);
      String note = "{\"kind\": \"NOTE\", \"note\": \"all well\"}";
      String at = "/api/jobs/" + job.id() + "/events";
      assertEquals(201, served.post(at, note).statusCode());
      assertEquals(201, served.post(at, note).statusCode());
      change("UPDATE job_event SET kind = 'NOTF' WHERE id = 1");
      everythingIsAnswered(served, job.id());
      assertEquals(1, served.json(at).size());
      assertTrue(health(served).contains("event 1 can't be read"), health(served));
    }
    assertTrue(Stores.files(directory).audit().toString().contains("event 1"));
  }

  /** As an older version, which did not bound it, may have stored it. */
  @Test
  void aPlanOfTooManyPositionsHoldsUpNoOtherStation() throws Exception {
    StringBuilder positions = new StringBuilder();
    for (int i = 0; i < 150; i++) {
      positions.append(i == 0 ? "" : ",").append("\"p").append(i).append('"');
    }
    try (Served served = new Served(directory)) {
      Job job = served.job();
      change("UPDATE job SET plan = json_set(plan, '$.positions', json('[" + positions + "]'))");
      change("UPDATE job SET name = 'many' WHERE id = " + job.id());
      served.readings(job, 3);
      for (String path : List.of("/api/overview", "/api/attention", "/api/jobs", "/api/machines")) {
        assertEquals(200, served.get(path).statusCode(), path);
      }
    }
  }
}
