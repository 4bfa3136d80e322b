package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.HandlerType;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.Await;
import org.chordlog.account.Role;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.measure.Job;
import org.chordlog.measure.alert.Alert;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a plant answers: as the workshop computers do, to be read, with requests to them. */
final class PlantWebTest {
  private static final String HALL = "/edges/hall%201";
  @TempDir static Path directory;
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static Served served;
  private static Store own;
  private static PlantOfStores plant;
  private static PlantWeb web;
  private static ChartRenderer charts;
  private static Job job;

  @BeforeAll
  static void serve() throws Exception {
    served = new Served(ShopPages.filled(directory.resolve("hall")));
    own = Stores.open(directory.resolve("own"));
    plant =
        new PlantOfStores(own)
            .with("Main works", "hall 1", served.store)
            .without("North", "cellar");
    charts = ChartRenderer.start();
    web = new PlantWeb(WebSettings.onLoopback(0), plant, charts, Clock.systemUTC());
    web.start();
    job = served.store.jobs().search(JobQuery.of(JobQuery.Order.NEWEST, 1)).get(0);
  }

  @AfterAll
  static void stop() {
    web.close();
    charts.close();
    own.close();
    served.close();
  }

  private static URI uri(String path) {
    return URI.create("http://127.0.0.1:" + web.port() + path);
  }

  private static HttpResponse<String> get(String path) throws Exception {
    return CLIENT.send(HttpRequest.newBuilder(uri(path)).build(), BodyHandlers.ofString());
  }

  private static JsonNode json(String path) throws Exception {
    HttpResponse<String> answer = get(path);
    assertEquals(200, answer.statusCode(), path + ": " + answer.body());
    return Json.shared().readTree(answer.body());
  }

  private static HttpResponse<String> send(
      String method, String path, String body, String... headers) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(uri(path))
            .method(method, BodyPublishers.ofString(body))
            .headers("Content-Type", "application/json", Call.BY, "Anna");
    if (headers.length > 0) {
      request.headers(headers);
    }
    return CLIENT.send(request.build(), BodyHandlers.ofString());
  }

  @Test
  void whatIsReadIsAnsweredAsTheWorkshopComputerDoes() throws Exception {
    String machine = "/api/machines/" + job.machine().replace(" ", "%20");
    String one = "/api/jobs/" + job.id();
    for (String path :
        List.of(
            "/api/jobs",
            one,
            one + "/statistics",
            one + "/charts",
            one + "/charts/mean-and-range?width=900&height=400",
            one + "/chart-facts",
            one + "/readings",
            one + "/readings.csv",
            one + "/statistics.csv",
            one + "/events",
            machine,
            machine + "/chart?width=900&height=400",
            machine + "/logbook",
            "/api/alerts/history",
            "/api/attention")) {
      assertEquals(served.get(path).body(), get(HALL + path).body(), path);
    }
  }

  /** Each as the document names it, with any number for what is in braces. */
  @Test
  void whatWouldChangeARecordIsRefusedWithTheNameOfTheWorkshopComputer() throws Exception {
    List<String> passedOn = new ArrayList<>();
    List<String> wrong = new ArrayList<>();
    for (Route row : web.routes()) {
      if (!row.path().startsWith(EdgeRoutes.BELOW) || !row.changes()) {
        continue;
      }
      if (row.answer() == RequestRoutes.RequestView.class) {
        passedOn.add(row.path().substring(EdgeRoutes.BELOW.length()));
        continue;
      }
      String path = row.path().replace("{edge}", "hall%201").replaceAll("\\{[a-zA-Z]+}", "1");
      HttpResponse<String> answer = send(row.method().name(), path, "{}");
      if (answer.statusCode() != 403 || !answer.body().contains("the records of hall 1")) {
        wrong.add(row.method() + " " + path + ": " + answer.body());
      }
    }
    assertEquals(List.of(), wrong);
    assertEquals(
        Set.of(
            "/api/alerts/{alert}/acknowledgement",
            "/api/alerts/{alert}/assignment",
            "/api/alerts/{alert}/shelf",
            "/api/machines/{machine}/logbook"),
        Set.copyOf(passedOn));
  }

  @Test
  void thePortsOfTheComputerThatServesAreNotThere() throws Exception {
    assertEquals(404, get(HALL + "/api/ports").statusCode());
    assertFalse(web.routes().stream().anyMatch(each -> each.path().contains("/api/ports")));
  }

  @Test
  void anAcknowledgementIsOnItsWayUntilTheWorkshopComputerAnswers() throws Exception {
    Alert alert =
        served.store.alerts().open().stream()
            .filter(each -> each.state().waits())
            .findFirst()
            .orElseThrow();
    String path = HALL + "/api/alerts/" + alert.id() + "/acknowledgement";
    HttpResponse<String> stale = send("POST", path, "{\"word\": \"seen\"}", "If-Match", "\"99\"");
    assertEquals(412, stale.statusCode(), stale.body());
    HttpResponse<String> asked =
        send("POST", path, "{\"word\": \"seen\"}", "If-Match", "\"" + alert.revision() + "\"");
    assertEquals(202, asked.statusCode(), asked.body());
    JsonNode view = Json.shared().readTree(asked.body());
    assertEquals("On its way to hall 1", view.path("stateWords").asText());
    assertEquals("Anna", view.path("by").asText());
    assertEquals(alert.revision(), served.store.alerts().find(alert.id()).orElseThrow().revision());
    Plant.Request left = plant.requests("hall 1", Long.MAX_VALUE, 1).get(0);
    assertEquals(
        Json.shared().readTree("{\"alertId\": %d, \"word\": \"seen\"}".formatted(alert.id())),
        Json.shared().readTree(left.body()));
    plant.answer(left.id(), "Somebody has acknowledged this alert already.");
    JsonNode newest = json(HALL + "/api/requests").get(0);
    assertEquals(
        "Refused: Somebody has acknowledged this alert already.",
        newest.path("stateWords").asText());
    plant.answer(left.id(), "");
    assertEquals("Done at hall 1", json(HALL + "/api/requests").get(0).path("stateWords").asText());
  }

  @Test
  void workForALogBookIsCheckedBeforeItIsSent() throws Exception {
    String path = HALL + "/api/machines/roller%201/logbook";
    HttpResponse<String> empty = send("POST", path, "{\"kind\": \"OTHER\"}");
    assertEquals(400, empty.statusCode(), empty.body());
    HttpResponse<String> setUp = send("POST", path, "{\"kind\": \"LUBRICATED\", \"setUp\": true}");
    assertEquals(409, setUp.statusCode(), setUp.body());
    HttpResponse<String> sent =
        send("POST", path, "{\"kind\": \"LUBRICATED\", \"doneAt\": \"2026-01-02T03:04:05Z\"}");
    assertEquals(202, sent.statusCode(), sent.body());
    JsonNode body = Json.shared().readTree(sent.body()).path("body");
    assertEquals("roller 1", body.path("machine").asText());
    assertEquals(1_767_323_045_000_000L, body.path("doneMicros").asLong());
    assertEquals("Anna", body.path("doneBy").asText());
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

  /** Those of a plant sign in there; a workshop computer's records need the same rights. */
  @Test
  void peopleSignInAtThePlant() throws Exception {
    Reach reach = Reach.PLAIN.withAccounts();
    try (Store people = Stores.open(directory.resolve("people"));
        PlantWeb closed =
            new PlantWeb(
                WebSettings.onLoopback(0).reached(reach),
                new PlantOfStores(people).with("", "hall 1", served.store),
                charts,
                Clock.systemUTC())) {
      closed.start();
      URI at = URI.create("http://127.0.0.1:" + closed.port());
      String code =
          closed.entrance().people().add("Olga", List.of(Role.OPERATOR.name()), "a test").code();
      String cookie =
          "chordlog=" + closed.entrance().activate("Olga", code, ShopPeople.PASSWORD, "here");
      assertEquals(401, status(at, "GET", "/api/plant", ""));
      assertEquals(401, status(at, "GET", HALL + "/api/jobs", ""));
      assertEquals(200, status(at, "GET", HALL + "/api/session", ""));
      assertEquals(200, status(at, "GET", HALL + "/api/jobs", cookie));
      assertEquals(403, status(at, "POST", HALL + "/api/machines/roller%201/logbook", cookie));
      assertEquals(403, status(at, "GET", "/api/accounts", cookie));
    }
  }

  private static int status(URI at, String method, String path, String cookie) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create(at + path))
            .method(method, BodyPublishers.ofString("{\"kind\": \"LUBRICATED\"}"))
            .headers("Content-Type", "application/json", Call.BY, "x", "Cookie", cookie + ";");
    return CLIENT.send(request.build(), BodyHandlers.ofString()).statusCode();
  }

  /** Both ask GET by the same method as HEAD. */
  @Test
  void everyRowIsThereOnce() {
    List<String> rows =
        web.routes().stream().map(each -> each.method() + " " + each.path()).toList();
    assertEquals(Set.copyOf(rows).size(), rows.size());
    assertTrue(
        web.routes().stream()
            .filter(each -> each.method().equals(HandlerType.GET))
            .map(Route::path)
            .collect(Collectors.toSet())
            .contains("/edges/{edge}/api/jobs/{job}/statistics"));
  }
}
