package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.chordlog.account.Role;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Screens that people share are listed, have names of their own, and can be ended by hand. */
@Tag("slow")
final class SharedScreensTest {
  private static final String SHARE = "/api/session/screen";
  private static final String SCREENS = "/api/screens";
  @TempDir Path directory;

  private static String named(String name) {
    return "{\"name\": \"%s\"}".formatted(name);
  }

  private static String shared(ShopPeople people, String boss, String name) throws Exception {
    HttpResponse<String> answer = people.ask(boss, "POST", SHARE, named(name));
    assertEquals(204, answer.statusCode(), answer::body);
    return ShopPeople.cookie(answer);
  }

  private static String signedIn(ShopPeople people, String name) throws Exception {
    return ShopPeople.cookie(people.signIn(name, ShopPeople.PASSWORD));
  }

  @Test
  void aScreenThatWasLostIsEndedFromAnotherForGood() throws Exception {
    String screen;
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      screen = shared(people, people.signedIn("Boss", Role.ADMINISTRATOR), "Tablet 1");
      assertEquals(200, people.status(screen, "GET", "/api/stations", ""));
      String boss = signedIn(people, "Boss");
      JsonNode listed = Served.tree(people.ask(boss, "GET", SCREENS, ""));
      assertEquals("Tablet 1", listed.at("/0/name").asText());
      assertFalse(listed.at("/0/usedAt").isNull(), listed::toString);
      String one = SCREENS + "/" + listed.at("/0/id").asText();
      assertEquals(403, people.status(screen, "DELETE", one, ""));
      assertEquals(204, people.status(boss, "DELETE", one, ""));
      assertEquals(401, people.status(screen, "GET", "/api/stations", ""));
      assertEquals("[]", people.ask(boss, "GET", SCREENS, "").body());
      assertEquals(400, people.status(boss, "DELETE", one, ""));
      assertEquals(2, served.store.changes().about("screen Tablet 1").size());
    }
    try (Served again = ShopPeople.served(directory)) {
      assertEquals(401, new ShopPeople(again).status(screen, "GET", "/api/stations", ""));
    }
  }

  @Test
  void whoIsThereIsListedAndANameIsOfOneScreen() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      String first = people.signedIn("Boss", Role.ADMINISTRATOR);
      String unusedAnn = people.signedIn("Ann", Role.OPERATOR);
      String pin = "/api/accounts/" + people.id("Ann") + "/pin";
      assertEquals(200, people.status(first, "POST", pin, "{\"pin\": \"271828\"}"));
      String screen = shared(people, first, "Tablet 1");
      String form = "{\"name\": \"Ann\", \"pin\": \"271828\"}";
      assertEquals(200, people.status(screen, "POST", "/api/session/person", form));
      String boss = signedIn(people, "Boss");
      assertEquals(
          "Ann", Served.tree(people.ask(boss, "GET", SCREENS, "")).at("/0/person").asText());
      HttpResponse<String> taken = people.ask(boss, "POST", SHARE, named(" tablet 1 "));
      assertEquals(400, taken.statusCode(), taken::body);
      assertTrue(taken.body().contains("is the name of a screen that is shared"), taken.body());
      assertEquals(200, people.status(boss, "GET", SCREENS, ""), "signed out by what was refused");
      assertEquals(403, people.status(signedIn(people, "Ann"), "GET", SCREENS, ""));
    }
  }
}
