package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A second job of a name is made, and refused only to who wants to be asked. */
final class NamesakesTest {
  @TempDir Path directory;
  private Served served;
  private Job job;

  @BeforeEach
  void open() {
    served = new Served(directory);
    job = served.job();
  }

  @AfterEach
  void close() {
    served.close();
  }

  private ObjectNode body(String name) throws Exception {
    ObjectNode body = (ObjectNode) served.json("/api/jobs/" + job.id());
    body.remove(List.of("id", "currentLot", "revision", "version", "state", "openedAt"));
    body.remove(List.of("sectionWords", "planWords", "active", "readings"));
    return body.put("name", name);
  }

  @Test
  void programsMakeRepeatOrdersAsEver() throws Exception {
    assertEquals(201, served.post("/api/jobs", body(job.name()).toString()).statusCode());
  }

  @Test
  void whoWantsToBeAskedIs() throws Exception {
    String again =
        body(" " + job.name().toUpperCase(Locale.ROOT) + " ").put("unlessNamed", true).toString();
    HttpResponse<String> answer = served.post("/api/jobs", again);
    assertEquals(409, answer.statusCode(), answer.body());
    JsonNode problem = Served.tree(answer);
    assertEquals("/problems/same-name", problem.get("type").asText());
    String said = problem.get("detail").asText();
    assertTrue(said.startsWith("There is a job of this name already: job " + job.id()), said);
    String other = body(job.name() + " 2").put("unlessNamed", true).toString();
    assertEquals(201, served.post("/api/jobs", other).statusCode());
  }

  /** Its own name is no other job's. */
  @Test
  void aChangeIsAskedAboutWhereItChangesTheName() throws Exception {
    served.post("/api/jobs", body("other").toString());
    String at = "/api/jobs/" + job.id();
    ObjectNode same = body(job.name()).put("unlessNamed", true).put("why", "tried");
    assertEquals(200, served.put(at, same.put("part", "p 2").toString()).statusCode());
    assertEquals(409, served.put(at, same.put("name", "other").toString()).statusCode());
  }
}
