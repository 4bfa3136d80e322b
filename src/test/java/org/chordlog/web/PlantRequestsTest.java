package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
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
import org.chordlog.account.Role;
import org.chordlog.measure.alert.Alert;
import org.chordlog.store.Plant;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people at a plant ask of a workshop computer, which is cut off here, and what they may. */
@Tag("slow")
final class PlantRequestsTest {
  private static final String HALL = "/edges/hall%201";
  @TempDir static Path directory;
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static Served served;
  private static PlantRig rig;

  @BeforeAll
  static void serve() throws Exception {
    served = new Served(ShopPages.filled(directory.resolve("hall")));
    rig =
        new PlantRig()
            .with("Main works", "hall 1", served.store)
            .without("North", "cellar")
            .complete()
            .cutOff("hall 1");
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

  /** Each as the document names it, with any number for what is in braces. */
  @Test
  void whatWouldChangeARecordIsRefusedWithTheNameOfTheWorkshopComputer() throws Exception {
    List<String> passedOn = new ArrayList<>();
    List<String> wrong = new ArrayList<>();
    for (Route row : rig.web.routes()) {
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
    assertEquals("Acknowledge alert " + alert.id() + ": seen", view.path("words").asText());
    assertEquals("Anna", view.path("by").asText());
    assertEquals(alert.revision(), served.store.alerts().find(alert.id()).orElseThrow().revision());
    Plant.Request left = rig.requests("hall 1").get(0);
    assertEquals(
        Json.shared().readTree("{\"alertId\": %d, \"word\": \"seen\"}".formatted(alert.id())),
        Json.shared().readTree(left.body()));
    rig.answer(left.id(), "Somebody has acknowledged this alert already.");
    JsonNode newest = json(HALL + "/api/requests").get(0);
    assertEquals(
        "Refused: Somebody has acknowledged this alert already.",
        newest.path("stateWords").asText());
    rig.answer(left.id(), "");
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

  /** Those of a plant sign in there; a workshop computer's records need the same rights. */
  @Test
  void peopleSignInAtThePlant() throws Exception {
    Reach reach = Reach.PLAIN.withAccounts();
    try (PlantWeb closed =
        new PlantWeb(
            WebSettings.onLoopback(0).reached(reach), rig.plant, rig.charts, Clock.systemUTC())) {
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
}
