package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.account.Role;
import org.chordlog.measure.Job;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.store.JobQuery;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A service that delivers to a real database, and the pages of the plant on it. */
@Tag("slow")
final class DeliveredPlantTest {
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final String HALL = "/edges/hall%201";
  @TempDir static Path directory;
  private static Served served;
  private static PlantRig rig;

  @BeforeAll
  static void deliver() throws Exception {
    served = new Served(ShopPages.filled(directory.resolve("hall")));
    rig = new PlantRig().with("Main works", "hall 1", served.store).complete();
  }

  @AfterAll
  static void stop() {
    rig.close();
    served.close();
  }

  private static HttpResponse<String> get(String path) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + rig.web.port() + path);
    return CLIENT.send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString());
  }

  private static JsonNode json(String path) throws Exception {
    HttpResponse<String> answer = get(path);
    assertEquals(200, answer.statusCode(), path + ": " + answer.body());
    return Json.shared().readTree(answer.body());
  }

  /** Figures, charts, tables and judgements of every job and machine, to the last digit. */
  @Test
  void thePlantSaysWhatTheWorkshopComputerSays() throws Exception {
    for (Job job : served.store.jobs().search(JobQuery.of(JobQuery.Order.NEWEST, 50))) {
      String one = "/api/jobs/" + job.id();
      String machine = "/api/machines/" + job.machine().replace(" ", "%20");
      for (String path :
          List.of(
              one,
              one + "/statistics",
              one + "/charts",
              one + "/charts/mean-and-range?width=900&height=400",
              one + "/chart-facts",
              one + "/readings?limit=200",
              one + "/exclusions",
              one + "/events",
              one + "/history",
              one + "/statistics.csv",
              one + "/readings.csv",
              one + "/lots",
              machine,
              machine + "/jobs",
              machine + "/chart?width=900&height=400",
              machine + "/logbook")) {
        HttpResponse<String> there = served.get(path);
        HttpResponse<String> here = get(HALL + path);
        assertEquals(there.statusCode(), here.statusCode(), path + here.body());
        assertEquals(there.body(), here.body(), path);
      }
    }
    for (String path : List.of("/api/jobs?limit=200", "/api/attention", "/api/alerts/history")) {
      assertEquals(served.get(path).body(), get(HALL + path).body(), path);
    }
  }

  /** The request goes to the workshop computer, is done there, and comes back as a record. */
  @Test
  void anAlertAcknowledgedAtThePlantIsAcknowledgedAtTheMachine() throws Exception {
    Alert alert =
        served.store.alerts().open().stream()
            .filter(each -> each.state() == AlertState.UNACKNOWLEDGED)
            .findFirst()
            .orElseThrow();
    URI uri =
        URI.create(
            "http://127.0.0.1:"
                + rig.web.port()
                + HALL
                + "/api/alerts/"
                + alert.id()
                + "/acknowledgement");
    HttpRequest asked =
        HttpRequest.newBuilder(uri)
            .POST(BodyPublishers.ofString("{\"word\": \"I drive over\"}"))
            .headers("Content-Type", "application/json", Call.BY, "Petra")
            .build();
    assertEquals(202, CLIENT.send(asked, BodyHandlers.ofString()).statusCode());
    Await.until(
        () ->
            served.store.alerts().find(alert.id()).orElseThrow().state()
                == AlertState.ACKNOWLEDGED);
    Await.until(
        () ->
            "ACKNOWLEDGED".equals(json(HALL + "/api/alerts/" + alert.id()).at("/state").asText()));
    Await.until(() -> json(HALL + "/api/requests").get(0).path("answered").asBoolean());
    assertEquals("Done at hall 1", json(HALL + "/api/requests").get(0).path("stateWords").asText());
    assertTrue(
        served.store.alerts().events(alert.id()).stream()
            .anyMatch(event -> event.by().contains("Petra")));
  }

  /** Of a plant, so that every computer that serves it knows the same people. */
  @Test
  void peopleAreThoseOfThePlant() throws Exception {
    WebSettings settings = WebSettings.onLoopback(0).reached(Reach.PLAIN.withAccounts());
    try (PlantWeb closed = new PlantWeb(settings, rig.plant, rig.charts, Clock.systemUTC())) {
      closed.start();
      String code =
          closed.entrance().people().add("Olga", List.of(Role.OPERATOR.name()), "a test").code();
      String cookie =
          "chordlog=" + closed.entrance().activate("Olga", code, ShopPeople.PASSWORD, "here");
      URI uri = URI.create("http://127.0.0.1:" + closed.port() + HALL + "/api/jobs");
      assertEquals(401, status(HttpRequest.newBuilder(uri)));
      assertEquals(200, status(HttpRequest.newBuilder(uri).header("Cookie", cookie)));
    }
    assertTrue(rig.plant.own().accounts().people().stream().anyMatch(p -> p.name().equals("Olga")));
  }

  private static int status(HttpRequest.Builder request) throws Exception {
    return CLIENT.send(request.build(), BodyHandlers.ofString()).statusCode();
  }
}
