package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Level;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.account.Right;
import org.chordlog.account.Role;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the log says of who came in and who did not: enough to look into it, and no secret. */
@Tag("slow")
final class SignInLogTest {
  private static final String WRONG = "a wrong password of somebody";
  private static final String PIN = "748159";
  private static final String BADGE = "badge-0093-4417";
  @TempDir Path directory;

  @Test
  void whatIsTriedIsLoggedWithoutASecret() throws Exception {
    try (Served served = ShopPeople.served(directory);
        LoggedLines log = new LoggedLines()) {
      ShopPeople people = new ShopPeople(served);
      String boss = people.signedIn("Boss", Role.ADMINISTRATOR);
      String code = people.added("Ann", Role.OPERATOR).code();
      assertEquals(401, activated(served, "AAAA-BBBB-CCCC-DDDD"));
      assertEquals(204, activated(served, code));
      assertEquals(401, people.signIn("Ann", WRONG).statusCode());
      HttpResponse<String> ann = people.signIn("Ann", ShopPeople.PASSWORD);
      String token = token(people, boss);
      assertEquals(200, byToken(served, token));
      assertEquals(401, byToken(served, "not-" + token));
      String screen = atScreen(people, boss);
      for (String line :
          List.of(
              "INFO signed in [account=\"Ann\", address=\"127.0.0.1\"]",
              "of=\"account Ann\"",
              "of=\"account of a program at 127.0.0.1\"",
              "of=\"account of a badge at 127.0.0.1\"")) {
        assertTrue(log.all().contains(line), line + " is not in\n" + log.all());
      }
      List<String> secrets =
          List.of(
              ShopPeople.PASSWORD,
              WRONG,
              code,
              code.replace("-", ""),
              "AAAA-BBBB",
              token,
              PIN,
              "748150",
              BADGE,
              secret(boss),
              secret(screen),
              secret(ShopPeople.cookie(ann)));
      for (String each : secrets) {
        assertFalse(log.all().contains(each), each + " is in the log");
      }
    }
  }

  private static String secret(String cookie) {
    return cookie.substring(cookie.indexOf('=') + 1);
  }

  private static int activated(Served served, String code) throws Exception {
    String form =
        "{\"name\": \"Ann\", \"code\": \"%s\", \"password\": \"%s\"}"
            .formatted(code, ShopPeople.PASSWORD);
    String at = "/api/session/activation";
    return served.send("POST", at, form, "Content-Type", "application/json").statusCode();
  }

  private static String token(ShopPeople people, String boss) throws Exception {
    String form = "{\"name\": \"press\", \"rights\": [\"look\"], \"days\": 30}";
    HttpResponse<String> made = people.ask(boss, "POST", "/api/tokens", form);
    assertEquals(201, made.statusCode(), made::body);
    return Served.tree(made).get("secret").asText();
  }

  private static int byToken(Served served, String token) throws Exception {
    return served.get("/api/stations", "Authorization", "Bearer " + token).statusCode();
  }

  /** A screen that Ann comes to by PIN and by badge, after a wrong one of each; its cookie. */
  private static String atScreen(ShopPeople people, String boss) throws Exception {
    String ann = "/api/accounts/" + people.id("Ann");
    assertEquals(200, people.status(boss, "POST", ann + "/pin", "{\"pin\": \"" + PIN + "\"}"));
    String badge = "{\"badge\": \"" + BADGE + "\"}";
    assertEquals(200, people.status(boss, "POST", ann + "/badge", badge));
    String screen =
        ShopPeople.cookie(people.ask(boss, "POST", "/api/session/screen", "{\"name\": \"hall\"}"));
    String pin = "{\"name\": \"Ann\", \"pin\": \"%s\"}";
    String at = "/api/session/person";
    assertEquals(401, people.status(screen, "POST", at, pin.formatted("748150")));
    assertEquals(200, people.status(screen, "POST", at, pin.formatted(PIN)));
    assertEquals(401, people.status(screen, "POST", at, badge.replace("0093", "0094")));
    assertEquals(200, people.status(screen, "POST", at, badge));
    return screen;
  }

  @Test
  void aRefusedRightIsLoggedWithWhoAndWhat() throws Exception {
    try (Served served = ShopPeople.served(directory);
        LoggedLines log = new LoggedLines()) {
      ShopPeople people = new ShopPeople(served);
      String viewer = people.signedIn("Vera", Role.VIEWER);
      assertEquals(403, people.status(viewer, "POST", "/api/accounts", "{\"name\": \"x\"}"));
      List<String> lines = log.with(Level.WARN, "not among the rights");
      assertEquals(1, lines.size(), log.all());
      String line = lines.get(0);
      for (String part :
          List.of("\"Vera\"", "127.0.0.1", "/api/accounts", Right.ADMINISTER.name())) {
        assertTrue(line.contains(part), line);
      }
    }
  }
}
