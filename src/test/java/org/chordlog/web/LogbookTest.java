package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.SentTwice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The log book of a machine, over HTTP. */
final class LogbookTest {
  private static final String BOOK = "/api/machines/three-roll%20bender/logbook";
  private static final String WORK =
      "{\"kind\": \"BEARING_RENEWED\", \"roller\": \"entry\", \"before\": \"play 0.4 mm\","
          + " \"after\": \"0.05 mm\", \"note\": \"both sides\","
          + " \"doneAt\": \"2026-05-04T07:30:00Z\", \"doneBy\": \"fitter of the day\"}";

  @TempDir Path directory;

  private static void assertRefused(int status, String words, HttpResponse<String> answer) {
    assertEquals(status, answer.statusCode(), answer::body);
    assertTrue(answer.body().contains(words), answer::body);
  }

  @Test
  void whatWasDoneComesBackWithWhoDidItAndWhoWroteIt() throws Exception {
    try (Served served = new Served(directory)) {
      HttpResponse<String> made = served.post(BOOK, WORK);
      assertEquals(201, made.statusCode(), made::body);
      JsonNode kept = served.json(BOOK).at("/items/0");
      assertEquals(Served.tree(made), kept);
      assertEquals("BEARING_RENEWED", kept.get("kind").asText());
      assertEquals("entry", kept.get("roller").asText());
      assertEquals("play 0.4 mm", kept.get("before").asText());
      assertEquals("0.05 mm", kept.get("after").asText());
      assertEquals("2026-05-04T07:30:00Z", kept.get("doneAt").asText());
      assertEquals("fitter of the day", kept.get("doneBy").asText());
      assertEquals("Jörg", kept.get("by").asText());
      HttpResponse<String> brief = served.post(BOOK, "{\"kind\": \"LUBRICATED\"}");
      assertEquals("Jörg", Served.tree(brief).get("doneBy").asText());
    }
  }

  @Test
  void eachFieldThatCantBeSoIsNamed() throws Exception {
    try (Served served = new Served(directory)) {
      assertRefused(400, "\"kind\"", served.post(BOOK, "{}"));
      assertRefused(400, "\"note\"", served.post(BOOK, "{\"kind\": \"OTHER\"}"));
      String later = "{\"kind\": \"LUBRICATED\", \"doneAt\": \"2199-01-01T00:00:00Z\"}";
      assertRefused(400, "is in the future", served.post(BOOK, later));
      String noTime = "{\"kind\": \"LUBRICATED\", \"doneAt\": \"yesterday\"}";
      assertRefused(400, "\"doneAt\"", served.post(BOOK, noTime));
      String tooLong = "{\"kind\": \"LUBRICATED\", \"after\": \"" + "x".repeat(201) + "\"}";
      assertRefused(400, "\"after\"", served.post(BOOK, tooLong));
      assertRefused(404, "no machine", served.post("/api/machines/unheard/logbook", WORK));
      assertEquals(0, served.json(BOOK).get("items").size());
    }
  }

  @Test
  void anEntryIsCorrectedByANewOneAndAStaleCorrectionIsToldWhatItSaysNow() throws Exception {
    try (Served served = new Served(directory)) {
      String first = BOOK + "/" + Served.tree(served.post(BOOK, WORK)).get("id");
      String entry = "{\"kind\": \"ROLLER_CHANGED\", \"roller\": \"entry\"}";
      String change = "{\"why\": \"wrong line\", \"entry\": " + entry + "}";
      assertRefused(400, "\"why\"", served.post(first + "/corrections", "{}"));
      assertRefused(400, "\"entry\"", served.post(first + "/corrections", "{\"why\": \"x\"}"));
      HttpResponse<String> second = served.post(first + "/corrections", change);
      assertEquals(201, second.statusCode(), second::body);
      HttpResponse<String> stale = served.post(first + "/corrections", change);
      assertEquals(412, stale.statusCode(), stale::body);
      assertEquals(Served.tree(second), Served.tree(stale).get("present"));
      String newer = BOOK + "/" + Served.tree(second).get("id") + "/corrections";
      assertEquals(
          201,
          served.post(newer, "{\"why\": \"other machine\", \"withdraws\": true}").statusCode());
      JsonNode all = served.json(BOOK).get("items");
      assertEquals(3, all.size());
      assertTrue(all.get(0).get("withdraws").booleanValue());
      assertEquals(all.get(0).get("id"), all.get(1).get("correctedBy"));
      assertEquals(all.get(1).get("id"), all.get(2).get("correctedBy"));
      assertEquals("BEARING_RENEWED", all.get(2).get("kind").asText(), "stays readable");
      assertEquals(404, served.post(BOOK + "/99/corrections", change).statusCode());
    }
  }

  @Test
  void sentTwiceItIsWrittenOnceAndPagesFollowEachOther() throws Exception {
    try (Served served = new Served(directory)) {
      for (int i = 0; i < 3; i++) {
        HttpResponse<String> made =
            served.send(
                "POST",
                BOOK,
                WORK,
                Call.BY,
                "tester",
                "Content-Type",
                "application/json",
                SentTwice.KEY,
                "one-and-the-same");
        assertEquals(201, made.statusCode(), made::body);
      }
      assertEquals(1, served.json(BOOK).get("items").size());
      served.post(BOOK, WORK);
      JsonNode page = served.json(BOOK + "?limit=1");
      JsonNode next = served.json(BOOK + "?limit=1&before=" + page.get("next"));
      assertEquals(2, page.at("/items/0/id").intValue());
      assertEquals(1, next.at("/items/0/id").intValue());
    }
  }

  @Test
  void workThatMovedTheRollersIsASetUpOfTheJobInProgress() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 3);
      served.post(BOOK, WORK);
      assertEquals(0, served.store.jobs().eventsOfJob(job.id()).size());
      String moved = WORK.replace("{\"kind\"", "{\"setUp\": true, \"kind\"");
      assertEquals(201, served.post(BOOK, moved).statusCode());
      JobEvent event = served.store.jobs().eventsOfJob(job.id()).get(0);
      assertEquals(JobEvent.Kind.SET_UP, event.kind());
      assertEquals("Bearing renewed, entry, both sides", event.note());
      assertEquals("Jörg", event.by());
    }
  }
}
