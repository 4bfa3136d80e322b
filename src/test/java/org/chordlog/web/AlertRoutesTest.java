package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.chordlog.account.Role;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.store.Some;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.SentTwice;
import org.chordlog.web.http.Times;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Alerts over HTTP: in what order they come, what people can do to them, and who may. */
final class AlertRoutesTest {
  private static final String MACHINE = "three-roll bender";
  private static final AlertKey CREEP = AlertKey.machine(AlertKind.ROLLER_CREEPS, MACHINE);
  private static final AlertKey JUMP = AlertKey.machine(AlertKind.ROLLER_JUMPED, MACHINE);
  private static final AlertKey LINK = AlertKey.station(AlertKind.LINK_LOST, "A");
  private static final AlertKey BACKUP = AlertKey.service(AlertKind.BACKUP_OLD);

  @TempDir Path directory;

  private static Alert raise(Served served, AlertKey key, Duration ago) {
    long at = Times.micros(Instant.now().minus(ago));
    return served.store.alerts().add(Some.raised(key, at)).alert();
  }

  private static HttpResponse<String> act(
      Served served, Alert alert, String move, int revision, String body) throws Exception {
    return served.send(
        "POST",
        "/api/alerts/" + alert.id() + "/" + move,
        body,
        Call.BY,
        "Petra",
        "Content-Type",
        "application/json",
        "If-Match",
        "\"" + revision + "\"");
  }

  private static JsonNode done(HttpResponse<String> answer) throws Exception {
    assertEquals(200, answer.statusCode(), answer::body);
    return Served.tree(answer);
  }

  /** The machine's page shows both, one above the other. */
  @Test
  void anAlertThatSaysOtherThanTheStatusOfItsMachineIsExplained() throws Exception {
    try (Served served = new Served(directory)) {
      served.readings(served.job(), 90);
      String machine = "/api/machines/" + MACHINE.replace(" ", "%20");
      assertEquals("", served.json(machine).get("besideAlert").asText());
      Alert unused = raise(served, CREEP, Duration.ofHours(1));
      String now = served.json(machine).at("/statement/word").asText().toLowerCase(Locale.ROOT);
      String said = served.json(machine).get("besideAlert").asText();
      assertTrue(said.contains("the status is: " + now), said);
    }
  }

  @Test
  void thoseThatWaitComeFirstTheMostUrgentAtTheTop() throws Exception {
    try (Served served = new Served(directory)) {
      Alert backup = raise(served, BACKUP, Duration.ofDays(3));
      Alert creep = raise(served, CREEP, Duration.ofHours(1));
      Alert jump = raise(served, JUMP, Duration.ofHours(2));
      Alert link = raise(served, LINK, Duration.ofMinutes(5));
      done(act(served, link, "acknowledgement", 1, "{}"));
      JsonNode all = served.json("/api/alerts");
      assertEquals(3, all.get("waiting").asInt());
      List<Long> ids =
          all.get("alerts").findValuesAsText("id").stream().map(Long::valueOf).toList();
      assertEquals(List.of(jump.id(), creep.id(), backup.id(), link.id()), ids);
      assertTrue(all.at("/alerts/0/overdue").asBoolean(), "an hour to act, raised two hours ago");
      assertFalse(all.at("/alerts/1/overdue").asBoolean());
      assertFalse(all.at("/alerts/3/overdue").asBoolean(), "somebody knows");
      assertEquals("Machine three-roll bender", all.at("/alerts/0/where").asText());
      assertEquals("Seen by Petra", all.at("/alerts/3/stateWords").asText());
      JsonNode ofMachine = served.json("/api/alerts?machine=three-roll%20bender").get("alerts");
      assertEquals(2, ofMachine.size());
      assertEquals(1, served.json("/api/alerts?station=A").get("alerts").size());
      assertEquals(0, served.json("/api/alerts?station=B").get("alerts").size());
      assertEquals(3, served.json("/api/alerts/waiting").get("waiting").asInt());
    }
  }

  @Test
  void lengthsOfTheEvidenceAreSaidInTheUnitAskedFor() throws Exception {
    try (Served served = new Served(directory)) {
      AlertKey check = AlertKey.station(AlertKind.GAUGE_UNFIT, "A");
      AlertEvidence off = AlertEvidence.of(Map.of(AlertFigure.DEVIATION_MM, 0.254));
      AlertEvent like = Some.raised(check, Some.T0);
      Alert alert = Alert.raised(check, like.alert().status(), off);
      AlertEvent event =
          new AlertEvent(like.what(), like.from(), alert, like.recorded(), like.note());
      Alert raised = served.store.alerts().add(event).alert();
      String path = "/api/alerts/" + raised.id();
      String mm = served.json(path).at("/statement/reason").asText();
      String inch = served.json(path + "?unit=inch").at("/statement/reason").asText();
      assertTrue(mm.contains("+0.25 mm"), mm);
      assertTrue(inch.contains("+0.010 in"), inch);
    }
  }

  @Test
  void whatPeopleDoIsDoneOnceKeptAndSaidInWords() throws Exception {
    try (Served served = new Served(directory)) {
      Alert creep = raise(served, CREEP, Duration.ofHours(1));
      JsonNode assigned =
          done(act(served, creep, "assignment", 1, "{\"to\": \"Marek\", \"word\": \"at noon\"}"));
      assertEquals("Marek", assigned.get("assignedTo").asText());
      JsonNode aside =
          done(act(served, creep, "shelf", 2, "{\"reason\": \"trial\", \"minutes\": 60}"));
      assertEquals("Put aside by Petra", aside.get("stateWords").asText());
      Instant until = Instant.parse(aside.get("shelvedUntil").asText());
      long minutes = Duration.between(Instant.now(), until).toMinutes();
      assertTrue(minutes >= 58 && minutes <= 60, () -> "minutes: " + minutes);
      assertEquals(
          "UNACKNOWLEDGED", done(act(served, creep, "shelf/end", 3, "{}")).get("state").asText());
      JsonNode repair = done(act(served, creep, "out-of-service", 4, "{\"reason\": \"bearing\"}"));
      assertEquals("Under repair, says Petra", repair.get("stateWords").asText());
      assertEquals(
          "NORMAL", done(act(served, creep, "out-of-service/end", 5, "{}")).get("state").asText());
      JsonNode events = served.json("/api/alerts/" + creep.id() + "/events");
      assertEquals(6, events.size());
      assertEquals("trial", events.get(2).get("note").asText());
      assertEquals(0, served.json("/api/alerts").get("alerts").size());
      assertEquals(creep.id(), served.json("/api/alerts/history").at("/items/0/id").asLong());
      assertEquals(1, served.json("/api/alerts/weeks").get(0).get("raised").asInt());
      assertEquals(8, served.json("/api/alerts/weeks").size());
    }
  }

  @Test
  void whoKnowsAnOlderStateIsToldThePresentOneAndNothingHappens() throws Exception {
    try (Served served = new Served(directory)) {
      Alert creep = raise(served, CREEP, Duration.ofHours(1));
      done(act(served, creep, "acknowledgement", 1, "{\"word\": \"on my way\"}"));
      HttpResponse<String> stale =
          act(served, creep, "shelf", 1, "{\"reason\": \"x\", \"minutes\": 5}");
      assertEquals(412, stale.statusCode(), stale::body);
      assertEquals("Seen by Petra", Served.tree(stale).at("/present/stateWords").asText());
      assertEquals("on my way", Served.tree(stale).at("/present/note").asText());
      HttpResponse<String> twice = act(served, creep, "acknowledgement", 2, "{}");
      assertEquals(409, twice.statusCode(), twice::body);
      assertEquals(2, served.store.alerts().events(creep.id()).size());
    }
  }

  @Test
  void fieldsThatCantBeSoAreNamedAndAnUnknownAlertIsNotFound() throws Exception {
    try (Served served = new Served(directory)) {
      Alert creep = raise(served, CREEP, Duration.ofHours(1));
      HttpResponse<String> none = act(served, creep, "shelf", 1, "{\"minutes\": 1441}");
      assertEquals(400, none.statusCode());
      assertEquals(
          List.of("reason", "minutes"), Served.tree(none).get("faults").findValuesAsText("field"));
      assertEquals(400, act(served, creep, "out-of-service", 1, "{}").statusCode());
      String tooLong = "{\"word\": \"" + "x".repeat(201) + "\"}";
      assertEquals(400, act(served, creep, "acknowledgement", 1, tooLong).statusCode());
      Alert unknown = creep.withId(99);
      assertEquals(404, act(served, unknown, "acknowledgement", 1, "{}").statusCode());
      assertEquals(404, served.get("/api/alerts/99").statusCode());
      Alert backup = raise(served, BACKUP, Duration.ofDays(1));
      String reason = "{\"reason\": \"the computer\"}";
      assertEquals(409, act(served, backup, "out-of-service", 1, reason).statusCode());
    }
  }

  @Test
  void sentTwiceUnderOneKeyItHappensOnce() throws Exception {
    try (Served served = new Served(directory)) {
      Alert creep = raise(served, CREEP, Duration.ofHours(1));
      String path = "/api/alerts/" + creep.id() + "/acknowledgement";
      for (int i = 0; i < 3; i++) {
        done(
            served.send(
                "POST",
                path,
                "{}",
                Call.BY,
                "Petra",
                "Content-Type",
                "application/json",
                SentTwice.KEY,
                "one-and-the-same",
                "If-Match",
                "\"1\""));
      }
      assertEquals(2, served.store.alerts().events(creep.id()).size());
    }
  }

  @Test
  void anUnchangedListIsNotSentAgain() throws Exception {
    try (Served served = new Served(directory)) {
      Alert creep = raise(served, CREEP, Duration.ofHours(1));
      String tag = served.get("/api/alerts").headers().firstValue("ETag").orElseThrow();
      assertEquals(304, served.get("/api/alerts", "If-None-Match", tag).statusCode());
      done(act(served, creep, "acknowledgement", 1, "{}"));
      assertEquals(200, served.get("/api/alerts", "If-None-Match", tag).statusCode());
    }
  }

  @Test
  void openPagesHearOfAlertsWhoeverStoredThem() throws Exception {
    try (Served served = new Served(directory);
        EventStream stream = EventStream.open(served, "/api/events")) {
      assertEquals(0, stream.next("alerts").data().get("waiting").asInt());
      raise(served, CREEP, Duration.ZERO);
      assertEquals(1, stream.next("alerts").data().get("waiting").asInt());
    }
  }

  @Test
  void anEntryOfTheLogBookEndsTheRepair() throws Exception {
    try (Served served = new Served(directory)) {
      Alert creep = raise(served, CREEP, Duration.ofHours(1));
      Alert link = raise(served, LINK, Duration.ofHours(1));
      for (Alert each : List.of(creep, link)) {
        done(act(served, each, "out-of-service", 1, "{\"reason\": \"bearing\"}"));
      }
      String book = "/api/machines/three-roll%20bender/logbook";
      served.post(book, "{\"kind\": \"LUBRICATED\"}");
      assertEquals(2, served.store.alerts().open().size(), "the repair goes on");
      String over =
          "{\"kind\": \"BEARING_RENEWED\", \"roller\": \"exit\", \"backInService\": true}";
      assertEquals(201, served.post(book, over).statusCode());
      assertEquals(List.of(), served.store.alerts().open());
      assertEquals(
          "Log book: Bearing renewed, exit",
          served.store.alerts().events(creep.id()).get(2).note());
    }
  }

  private static List<String> moves(ShopPeople people, String cookie, String path)
      throws Exception {
    JsonNode alert = Served.tree(people.ask(cookie, "GET", path, ""));
    return alert.get("moves").findValuesAsText("move");
  }

  @Test
  void whomItConcernsMayPutItAsideAndWhoOnlyLooksMayNothing() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      Alert creep = raise(served, CREEP, Duration.ofHours(1));
      String path = "/api/alerts/" + creep.id();
      String shelf = "{\"reason\": \"trial\", \"minutes\": 5}";
      String viewer = people.signedIn("viewer", Role.VIEWER);
      String operator = people.signedIn("operator", Role.OPERATOR);
      String fitter = people.signedIn("fitter", Role.MAINTENANCE);
      assertEquals(List.of(), moves(people, viewer, path));
      assertEquals(List.of("ACKNOWLEDGE", "ASSIGN"), moves(people, operator, path));
      assertEquals(
          List.of("ACKNOWLEDGE", "ASSIGN", "SHELVE", "TAKE_OUT_OF_SERVICE"),
          moves(people, fitter, path));
      assertEquals(403, people.status(viewer, "POST", path + "/acknowledgement", "{}"));
      assertEquals(403, people.status(operator, "POST", path + "/shelf", shelf));
      assertEquals(200, people.status(operator, "POST", path + "/acknowledgement", "{}"));
      assertEquals(200, people.status(fitter, "POST", path + "/shelf", shelf));
      assertEquals(
          AlertState.SHELVED, served.store.alerts().find(creep.id()).orElseThrow().state());
      assertEquals("fitter", served.store.alerts().events(creep.id()).get(2).by());
    }
  }
}
