package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import org.chordlog.account.Role;
import org.chordlog.measure.Job;
import org.chordlog.web.http.Call;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What roles, tokens and shared screens may do by HTTP, and what they may not. */
@Tag("slow")
final class WhoMayTest {
  @TempDir Path directory;

  @Test
  void whatIsNotAmongSomeonesRightsIsRefusedInWords() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String cookie = people.signedIn("Ann", Role.OPERATOR);
      HttpResponse<String> refused =
          people.ask(cookie, "POST", "/api/jobs/1/close", "{\"why\": \"done\"}");
      assertEquals(403, refused.statusCode());
      assertTrue(
          refused.body().contains("To exclude readings and close jobs takes the role quality."),
          refused.body());
    }
  }

  @Test
  void theOnlyAdministratorStays() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      String at = "/api/accounts/" + people.id("Boss");
      HttpResponse<String> refused =
          people.ask(boss, "POST", at + "/roles", "{\"roles\": [\"viewer\"]}");
      assertEquals(400, refused.statusCode());
      assertTrue(refused.body().contains("only administrator"), refused.body());
    }
  }

  /** A worn roller shows in a signal: who repairs it says so, and whoever only looks does not. */
  @Test
  void maintenanceRecordsTheCauseOfASignalAndMeasuresNothing() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      Job job = served.job();
      served.readings(job, 3);
      ShopPeople people = new ShopPeople(served);
      String path = "/api/jobs/" + job.id() + "/signal-answers";
      String form =
          """
          {"characteristic": "middle", "chart": "INDIVIDUALS", "readingId": 3, "cause": "worn"}
          """;
      String fitter = people.signedIn("Fitter", Role.MAINTENANCE);
      HttpResponse<String> made = people.ask(fitter, "POST", path, form);
      assertEquals(201, made.statusCode(), made.body());
      assertEquals("Fitter", Served.tree(made).get("by").asText());
      assertEquals(403, people.status(fitter, "POST", "/api/stations/A/undo", "{}"));
      HttpResponse<String> refused =
          people.ask(people.signedIn("Guest", Role.VIEWER), "POST", path, form);
      assertEquals(403, refused.statusCode());
      assertTrue(
          refused.body().contains("operator or gauge keeper or quality or maintenance"),
          refused::body);
    }
  }

  /** As it could before there was a right of its own for it. */
  @Test
  void aTokenThatMayMeasureAnswersSignalsToo() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      String form = "{\"name\": \"cell\", \"rights\": [\"measure\"], \"days\": 30}";
      JsonNode made = Served.tree(people.ask(boss, "POST", "/api/tokens", form));
      String path = "/api/jobs/" + served.job().id() + "/signal-answers";
      HttpResponse<String> answer =
          served.send(
              "POST",
              path,
              "{}",
              "Authorization",
              "Bearer " + made.get("secret").asText(),
              "Content-Type",
              "application/json");
      assertEquals(400, answer.statusCode(), answer.body());
    }
  }

  @Test
  void aTokenHasItsRightsAndNoMoreUntilItIsRevoked() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      String form = "{\"name\": \"scraper\", \"rights\": [\"look\"], \"days\": 30}";
      JsonNode made = Served.tree(people.ask(boss, "POST", "/api/tokens", form));
      String[] bearer = {"Authorization", "Bearer " + made.get("secret").asText()};
      assertEquals(200, served.get("/metrics", bearer).statusCode());
      assertEquals(403, served.send("POST", "/api/jobs", "{}", bearer).statusCode());
      String listed = people.ask(boss, "GET", "/api/tokens", "").body();
      assertFalse(listed.contains(made.get("secret").asText()));
      String one = "/api/tokens/" + made.at("/token/id").asLong();
      assertEquals(204, people.status(boss, "DELETE", one, ""));
      assertEquals(401, served.get("/metrics", bearer).statusCode());
    }
  }

  @Test
  void aSharedScreenChangesPersonByPinOrBadgeForMeasuringOnly() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      String unusedAnn = people.signedIn("Ann", Role.OPERATOR, Role.QUALITY);
      String unusedBo = people.signedIn("Bo", Role.OPERATOR);
      String ann = "/api/accounts/" + people.id("Ann");
      String bo = "/api/accounts/" + people.id("Bo");
      assertEquals(400, people.status(boss, "POST", ann + "/pin", "{\"pin\": \"111111\"}"));
      assertEquals(200, people.status(boss, "POST", ann + "/pin", "{\"pin\": \"271828\"}"));
      assertEquals(200, people.status(boss, "POST", bo + "/badge", "{\"badge\": \"0004711042\"}"));
      String screen =
          ShopPeople.cookie(
              people.ask(boss, "POST", "/api/session/screen", "{\"name\": \"Tablet 1\"}"));
      served.job();
      String at = "/api/stations/A/events";
      assertEquals(200, people.status(screen, "GET", "/api/stations", ""));
      assertEquals(403, people.status(screen, "POST", at, ShopPeople.NOTE));
      String person = "/api/session/person";
      String pin = "{\"name\": \"Ann\", \"pin\": \"%s\"}";
      assertEquals(401, people.status(screen, "POST", person, pin.formatted("271829")));
      long start = System.nanoTime();
      String[] nameless = {"Cookie", screen, Call.BY, "", "Content-Type", "application/json"};
      String right = pin.formatted("271828");
      assertEquals(200, served.send("POST", person, right, nameless).statusCode());
      System.out.println("change of person by PIN: " + Duration.ofNanos(System.nanoTime() - start));
      assertEquals(201, people.status(screen, "POST", at, ShopPeople.NOTE));
      assertEquals(403, people.status(screen, "POST", "/api/jobs/1/close", "{\"why\": \"x\"}"));
      assertEquals(200, people.status(screen, "POST", person, "{\"badge\": \"0004711042\"}"));
      assertEquals(201, people.status(screen, "POST", at, ShopPeople.NOTE));
      String events = people.ask(screen, "GET", "/api/jobs/1/events", "").body();
      assertTrue(events.contains("\"Ann\"") && events.contains("\"Bo\""), events);
      assertEquals(204, people.status(screen, "DELETE", "/api/session", ""));
      assertEquals(403, people.status(screen, "POST", at, ShopPeople.NOTE));
      assertEquals(200, people.status(screen, "GET", "/api/stations", ""));
    }
  }
}
