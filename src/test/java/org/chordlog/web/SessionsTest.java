package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.chordlog.account.Role;
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
  @TempDir Path directory;

  @Test
  void aPersonSignsInMeasuresUnderTheOwnNameAndSignsOut() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String first = people.signedIn("Ann", Role.OPERATOR);
      HttpResponse<String> answer = people.signIn("ANN", ShopPeople.PASSWORD);
      assertEquals(204, answer.statusCode(), answer::body);
      String cookie = ShopPeople.cookie(answer);
      assertFalse(cookie.equals(first));
      served.job();
      assertEquals(201, people.status(cookie, "POST", "/api/stations/A/events", ShopPeople.NOTE));
      String events = people.ask(cookie, "GET", "/api/jobs/1/events", "").body();
      assertTrue(events.contains("\"Ann\"") && !events.contains("somebody else"), events);
      assertEquals(204, people.status(cookie, "DELETE", "/api/session", ""));
      assertEquals(401, people.status(cookie, "GET", "/api/stations", ""));
      assertEquals(200, people.status(first, "GET", "/api/stations", ""));
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
        HttpResponse<String> refused =
            served.send("POST", "/api/stations/A/events", ShopPeople.NOTE, headers);
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
      long id = people.id("Ann");
      InputStream events = stream(served, ann);
      String at = "/api/accounts/" + id;
      assertEquals(200, people.status(boss, "POST", at + "/roles", "{\"roles\": [\"viewer\"]}"));
      assertTrue(
          new String(events.readAllBytes(), StandardCharsets.UTF_8).contains("event: hello"));
      assertEquals(401, people.status(ann, "GET", "/api/stations", ""));
      String again = ShopPeople.cookie(people.signIn("Ann", ShopPeople.PASSWORD));
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
