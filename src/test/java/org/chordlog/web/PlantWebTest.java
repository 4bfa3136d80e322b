package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.HandlerType;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.Await;
import org.chordlog.harness.Golden;
import org.chordlog.measure.Job;
import org.chordlog.store.JobQuery;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.OpenApi;
import org.chordlog.web.http.Route;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a plant answers of itself and of what its workshop computers delivered. */
@Tag("slow")
final class PlantWebTest {
  private static final String HALL = "/edges/hall%201";
  @TempDir static Path directory;
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static Served served;
  private static PlantRig rig;
  private static Job job;

  @BeforeAll
  static void serve() throws Exception {
    served = new Served(ShopPages.filled(directory.resolve("hall")));
    rig =
        new PlantRig()
            .with("Main works", "hall 1", served.store)
            .without("North", "cellar")
            .complete()
            .cutOff("hall 1");
    job = served.store.jobs().search(JobQuery.of(JobQuery.Order.NEWEST, 1)).get(0);
  }

  @AfterAll
  static void stop() {
    rig.close();
    served.close();
  }

  private static URI uri(String path) {
    return URI.create("http://127.0.0.1:" + rig.web.port() + path);
  }

  private static HttpResponse<String> get(String path) throws Exception {
    return CLIENT.send(HttpRequest.newBuilder(uri(path)).build(), BodyHandlers.ofString());
  }

  private static JsonNode json(String path) throws Exception {
    HttpResponse<String> answer = get(path);
    assertEquals(200, answer.statusCode(), path + ": " + answer.body());
    return Json.shared().readTree(answer.body());
  }

  @Test
  void thePortsOfTheComputerThatServesAreNotThere() throws Exception {
    assertEquals(404, get(HALL + "/api/ports").statusCode());
    assertFalse(rig.web.routes().stream().anyMatch(each -> each.path().contains("/api/ports")));
  }

  @Test
  void machinesOfAllWorkshopComputersComeByUrgency() throws Exception {
    Await.until(() -> json("/api/plant").path("edges").get(0).path("looked").asBoolean());
    JsonNode view = json("/api/plant");
    List<Integer> urgencies = new ArrayList<>();
    view.path("machines").forEach(each -> urgencies.add(each.path("urgency").asInt()));
    assertTrue(urgencies.size() >= 2, view::toString);
    assertEquals(urgencies.stream().sorted((a, b) -> b - a).toList(), urgencies);
    assertEquals("COMPLETE", view.path("edges").get(0).path("delivery").asText());
    assertEquals("NOTHING_YET", view.path("edges").get(1).path("delivery").asText());
    for (JsonNode machine : view.path("machines")) {
      String path = "/api/machines/" + machine.path("machine").asText().replace(" ", "%20");
      assertEquals(served.json(path).path("statement"), machine.path("statement"));
    }
  }

  @Test
  void jobsOfAllWorkshopComputersAreFound() throws Exception {
    JsonNode found = json("/api/plant/jobs?text=" + job.name().replace(" ", "%20"));
    assertEquals("hall 1", found.get(0).path("edge").asText());
    assertEquals(job.id(), found.get(0).path("job").path("id").asLong());
    assertEquals(0, json("/api/plant/jobs?text=nothing-like-it").size());
    assertEquals(404, get("/api/plant/jobs?edge=nobody").statusCode());
  }

  @Test
  void pagesThatMeasureOrChangeAreNotThere() throws Exception {
    for (String path :
        List.of(
            "/edges/nobody/",
            HALL + "/job-form.html",
            HALL + "/station.html",
            "/station.html",
            HALL + "/parts/none.js",
            HALL + "/parts/..%2Fjobs.html")) {
      int status = get(path).statusCode();
      assertTrue(status == 404 || status == 400, path + " " + status);
    }
    HttpResponse<String> front = get(HALL);
    assertEquals(302, front.statusCode());
    assertEquals("hall%201/", front.headers().firstValue("Location").orElseThrow());
    HttpResponse<String> page = get(HALL + "/");
    assertTrue(page.body().contains("<meta name=\"workshop\" content=\"hall 1\">"), page.body());
    assertEquals(404, served.get("/plant.html").statusCode());
  }

  @Test
  void whoHasDeliveredNothingHasNoRecordsToRead() throws Exception {
    assertEquals(200, get("/edges/cellar/").statusCode());
    assertEquals("NOTHING_YET", json("/edges/cellar/api/edge").path("delivery").asText());
    HttpResponse<String> jobs = get("/edges/cellar/api/jobs");
    assertEquals(409, jobs.statusCode(), jobs.body());
    assertTrue(jobs.body().contains("cellar has delivered nothing yet."), jobs.body());
  }

  @Test
  void healthNamesWhoIsNotWell() throws Exception {
    JsonNode health = json("/health");
    assertEquals("DEGRADED", health.path("status").asText());
    assertTrue(health.path("reasons").toString().contains("cellar was added"), health::toString);
  }

  @Test
  void metricsSayHowFarEachWorkshopComputerIs() throws Exception {
    String said = get("/metrics").body();
    long last = served.store.readings().lastId();
    assertTrue(said.contains("chordlog_edge_last_reading{edge=\"hall 1\"} " + (double) last), said);
    assertTrue(said.contains("chordlog_edge_backlog_records{edge=\"hall 1\"} 0.0"), said);
    assertFalse(said.contains("edge=\"cellar\""), said);
  }

  /** Both ask GET by the same method as HEAD. */
  @Test
  void everyRowIsThereOnce() {
    List<String> rows =
        rig.web.routes().stream().map(each -> each.method() + " " + each.path()).toList();
    assertEquals(Set.copyOf(rows).size(), rows.size());
    assertTrue(
        rig.web.routes().stream()
            .filter(each -> each.method().equals(HandlerType.GET))
            .map(Route::path)
            .collect(Collectors.toSet())
            .contains("/edges/{edge}/api/jobs/{job}/statistics"));
  }

  /**
   * What is not the same as below a workshop computer itself; keys in the order of the alphabet.
   */
  @Test
  void theDocumentOfThePlantsOwnApi() throws Exception {
    List<Route> own =
        rig.web.routes().stream()
            .filter(
                each ->
                    !each.path().startsWith(EdgeRoutes.BELOW)
                        || each.answer() == RequestRoutes.RequestView.class
                        || each.answer() == PlantRoutes.EdgeView.class)
            .toList();
    Golden.check("plant-openapi.json", ServiceGoldenTest.text(OpenApi.document(own, "any")));
  }
}
