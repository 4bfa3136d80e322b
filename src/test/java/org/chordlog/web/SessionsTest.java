package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.InputStream;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.chordlog.account.Role;
import org.chordlog.measure.Job;
import org.chordlog.web.http.AddressRange;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Signing in and out by HTTP, what it ends, and whose name the records have. */
@Tag("slow")
final class SessionsTest {
  private static final String NOTE = "{\"kind\": \"NOTE\", \"note\": \"a remark\"}";
  @TempDir Path directory;

  private static String cookie(HttpResponse<String> answer) {
    String set = answer.headers().firstValue("Set-Cookie").orElseThrow();
    assertTrue(set.contains("; Path=/; HttpOnly; SameSite=Strict"), set);
    return set.substring(0, set.indexOf(';'));
  }

  private static long id(Served served, String name) {
    return served.web.entrance().people().all().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow()
        .id();
  }

  @Test
  void aPersonSignsInMeasuresUnderTheOwnNameAndSignsOut() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String first = people.signedIn("Ann", Role.OPERATOR);
      HttpResponse<String> answer = people.signIn("ANN", ShopPeople.PASSWORD);
      assertEquals(204, answer.statusCode(), answer::body);
      String cookie = cookie(answer);
      assertFalse(cookie.equals(first));
      served.job();
      assertEquals(201, people.status(cookie, "POST", "/api/stations/A/events", NOTE));
      String events = people.ask(cookie, "GET", "/api/jobs/1/events", "").body();
      assertTrue(events.contains("\"Ann\"") && !events.contains("somebody else"), events);
      assertEquals(204, people.status(cookie, "DELETE", "/api/session", ""));
      assertEquals(401, people.status(cookie, "GET", "/api/stations", ""));
      assertEquals(200, people.status(first, "GET", "/api/stations", ""));
    }
  }

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
  void aCookieAloneChangesNothing() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      String cookie = new ShopPeople(served).signedIn("Ann", Role.OPERATOR);
      String[][] foreign = {
        {"Cookie", cookie, "Content-Type", "application/json"},
        {"Cookie", cookie, Call.BY, "x", "Sec-Fetch-Site", "cross-site"},
        {"Cookie", cookie, Call.BY, "x", "Origin", "http://evil.test"}
      };
      for (String[] headers : foreign) {
        HttpResponse<String> refused = served.send("POST", "/api/stations/A/events", NOTE, headers);
        assertEquals(403, refused.statusCode(), String.join(" ", headers));
      }
    }
  }

  @Test
  void disablingNewRolesAndSigningOutEndOpenStreams() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      String ann = people.signedIn("Ann", Role.OPERATOR);
      long id = id(served, "Ann");
      InputStream events = stream(served, ann);
      String at = "/api/accounts/" + id;
      assertEquals(200, people.status(boss, "POST", at + "/roles", "{\"roles\": [\"viewer\"]}"));
      assertTrue(
          new String(events.readAllBytes(), StandardCharsets.UTF_8).contains("event: hello"));
      assertEquals(401, people.status(ann, "GET", "/api/stations", ""));
      String again = cookie(people.signIn("Ann", ShopPeople.PASSWORD));
      InputStream second = stream(served, again);
      assertEquals(200, people.status(boss, "POST", at + "/disabled", "{\"disabled\": true}"));
      assertTrue(second.readAllBytes().length > 0);
      assertEquals(401, people.signIn("Ann", ShopPeople.PASSWORD).statusCode());
      InputStream third = stream(served, boss);
      assertEquals(204, people.status(boss, "DELETE", "/api/session", ""));
      assertTrue(third.readAllBytes().length > 0);
      assertTrue(served.store.changes().about("account Ann").size() >= 4);
    }
  }

  private static InputStream stream(Served served, String cookie) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(served.uri("/api/events")).header("Cookie", cookie).build();
    HttpResponse<InputStream> answer = served.client.send(request, BodyHandlers.ofInputStream());
    assertEquals(200, answer.statusCode());
    return answer.body();
  }

  @Test
  void theOnlyAdministratorStays() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      String at = "/api/accounts/" + id(served, "Boss");
      HttpResponse<String> refused =
          people.ask(boss, "POST", at + "/roles", "{\"roles\": [\"viewer\"]}");
      assertEquals(400, refused.statusCode());
      assertTrue(refused.body().contains("only administrator"), refused.body());
    }
  }

  @Test
  void wrongPasswordsAreMadeToWaitAlsoForTheRightOne() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String unused = people.signedIn("Ann", Role.OPERATOR);
      for (int i = 0; i < 5; i++) {
        HttpResponse<String> wrong = people.signIn(i % 2 == 0 ? "Ann" : "ann", "guess " + i);
        assertEquals(401, wrong.statusCode(), wrong::body);
        assertTrue(wrong.body().contains("do not belong together"), wrong.body());
      }
      HttpResponse<String> waits = people.signIn("Ann", ShopPeople.PASSWORD);
      assertEquals(429, waits.statusCode());
      assertTrue(waits.headers().firstValue("Retry-After").isPresent());
    }
  }

  @Test
  void aCodeIsUsedOnceAndCommonPasswordsAreRefused() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String code = people.added("Ann", Role.QUALITY).code();
      String form = "{\"name\": \"Ann\", \"code\": \"%s\", \"password\": \"%s\"}";
      String at = "/api/session/activation";
      for (String weak : List.of("short", "password1", "aaaaaaaaaa", "ann-ann-ann")) {
        HttpResponse<String> refused = post(served, at, form.formatted(code, weak));
        assertEquals(400, refused.statusCode(), weak);
      }
      String typed = code.replace("-", " ").toLowerCase(Locale.ROOT);
      HttpResponse<String> done = post(served, at, form.formatted(typed, ShopPeople.PASSWORD));
      assertEquals(204, done.statusCode(), done::body);
      assertEquals(401, post(served, at, form.formatted(code, ShopPeople.PASSWORD)).statusCode());
    }
  }

  private static HttpResponse<String> post(Served served, String path, String body)
      throws Exception {
    return served.send("POST", path, body, "Content-Type", "application/json");
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
  void sessionsOutliveARestartAndNoSecretIsInTheFile() throws Exception {
    String cookie;
    try (Served served = ShopPeople.served(directory)) {
      cookie = new ShopPeople(served).signedIn("Ann", Role.OPERATOR);
    }
    byte[] file = Files.readAllBytes(directory.resolve("chordlog.db"));
    String text = new String(file, StandardCharsets.ISO_8859_1);
    assertTrue(text.contains("$argon2id$v=19$m=12288,t=3,p=1$"));
    assertFalse(text.contains(cookie.substring("chordlog=".length())));
    assertFalse(text.contains(ShopPeople.PASSWORD));
    try (Served served = ShopPeople.served(directory)) {
      assertEquals(200, new ShopPeople(served).status(cookie, "GET", "/api/stations", ""));
    }
  }

  @Test
  void aSharedScreenChangesPersonByPinOrBadgeForMeasuringOnly() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      String unusedAnn = people.signedIn("Ann", Role.OPERATOR, Role.QUALITY);
      String unusedBo = people.signedIn("Bo", Role.OPERATOR);
      String ann = "/api/accounts/" + id(served, "Ann");
      String bo = "/api/accounts/" + id(served, "Bo");
      assertEquals(400, people.status(boss, "POST", ann + "/pin", "{\"pin\": \"111111\"}"));
      assertEquals(200, people.status(boss, "POST", ann + "/pin", "{\"pin\": \"271828\"}"));
      assertEquals(200, people.status(boss, "POST", bo + "/badge", "{\"badge\": \"0004711042\"}"));
      String screen =
          cookie(people.ask(boss, "POST", "/api/session/screen", "{\"name\": \"Tablet 1\"}"));
      served.job();
      String at = "/api/stations/A/events";
      assertEquals(200, people.status(screen, "GET", "/api/stations", ""));
      assertEquals(403, people.status(screen, "POST", at, NOTE));
      String person = "/api/session/person";
      String pin = "{\"name\": \"Ann\", \"pin\": \"%s\"}";
      assertEquals(401, people.status(screen, "POST", person, pin.formatted("271829")));
      long start = System.nanoTime();
      String[] nameless = {"Cookie", screen, Call.BY, "", "Content-Type", "application/json"};
      String right = pin.formatted("271828");
      assertEquals(200, served.send("POST", person, right, nameless).statusCode());
      System.out.println("change of person by PIN: " + Duration.ofNanos(System.nanoTime() - start));
      assertEquals(201, people.status(screen, "POST", at, NOTE));
      assertEquals(403, people.status(screen, "POST", "/api/jobs/1/close", "{\"why\": \"x\"}"));
      assertEquals(200, people.status(screen, "POST", person, "{\"badge\": \"0004711042\"}"));
      assertEquals(201, people.status(screen, "POST", at, NOTE));
      String events = people.ask(screen, "GET", "/api/jobs/1/events", "").body();
      assertTrue(events.contains("\"Ann\"") && events.contains("\"Bo\""), events);
      assertEquals(204, people.status(screen, "DELETE", "/api/session", ""));
      assertEquals(403, people.status(screen, "POST", at, NOTE));
      assertEquals(200, people.status(screen, "GET", "/api/stations", ""));
    }
  }

  @Test
  void withoutAccountsNobodySignsIn() throws Exception {
    try (Served served = new Served(directory)) {
      assertFalse(served.json("/api/session").get("accounts").asBoolean());
      String form = "{\"name\": \"a\", \"password\": \"b\"}";
      assertEquals(409, served.post("/api/session", form).statusCode());
      assertEquals(409, served.post("/api/accounts", "{\"name\": \"a\"}").statusCode());
      assertEquals(0, served.json("/api/accounts").size());
    }
  }

  @Test
  void byHttpsTheCookieCanBeSetByNoOtherHost() throws Exception {
    Reach reach =
        new Reach(Set.of("shop.example"), List.of(AddressRange.read("127.0.0.1")), null)
            .withAccounts();
    WebSettings settings = WebSettings.onLoopback(0).reached(reach);
    try (Served served = new Served(directory, settings)) {
      ShopPeople people = new ShopPeople(served);
      String unused = people.signedIn("Ann", Role.VIEWER);
      String form = "{\"name\": \"Ann\", \"password\": \"" + ShopPeople.PASSWORD + "\"}";
      HttpResponse<String> answer =
          served.send(
              "POST",
              "/api/session",
              form,
              "Content-Type",
              "application/json",
              "X-Forwarded-Proto",
              "https");
      String set = answer.headers().firstValue("Set-Cookie").orElseThrow();
      assertTrue(set.startsWith("__Host-chordlog=") && set.contains("; Secure"), set);
    }
  }
}
