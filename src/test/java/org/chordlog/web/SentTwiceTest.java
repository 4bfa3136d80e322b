package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.chordlog.account.Role;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.SentTwice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A change that is sent twice with one key is done once, whatever it is and however it comes, also
 * with a restart between.
 */
final class SentTwiceTest {
  private static final String EVENTS = "/api/stations/A/events";
  private static final int CHANGES = 250;
  @TempDir Path directory;

  private static HttpResponse<String> keyed(Served served, String at, String body, String key)
      throws Exception {
    return served.send(
        "POST",
        at,
        body,
        Call.BY,
        "tester",
        "Content-Type",
        "application/json",
        SentTwice.KEY,
        key);
  }

  private static String note(String text) {
    return "{\"kind\": \"NOTE\", \"note\": \"" + text + "\"}";
  }

  @Test
  void theSecondIsAnsweredAsTheFirst() throws Exception {
    try (Served served = new Served(directory)) {
      long job = served.job().id();
      HttpResponse<String> first = keyed(served, EVENTS, note("a"), "key-number-1");
      HttpResponse<String> second = keyed(served, EVENTS, note("a"), "key-number-1");
      assertEquals(201, first.statusCode());
      assertEquals(201, second.statusCode());
      assertEquals(first.body(), second.body());
      assertEquals("true", second.headers().firstValue("Idempotent-Replayed").orElseThrow());
      assertEquals(1, served.json("/api/jobs/" + job + "/events").size());
      assertEquals(422, keyed(served, EVENTS, note("b"), "key-number-1").statusCode());
      assertEquals(400, keyed(served, EVENTS, note("b"), "short").statusCode());
    }
  }

  @Test
  void afterARestartItIsAnsweredAsBeforeAndNotDoneAgain() throws Exception {
    long job;
    String first;
    try (Served served = new Served(directory)) {
      job = served.job().id();
      first = keyed(served, EVENTS, note("a"), "key-number-1").body();
    }
    try (Served served = new Served(directory)) {
      HttpResponse<String> second = keyed(served, EVENTS, note("a"), "key-number-1");
      assertEquals(201, second.statusCode());
      assertEquals(first, second.body());
      assertEquals("true", second.headers().firstValue("Idempotent-Replayed").orElseThrow());
      assertEquals(422, keyed(served, EVENTS, note("b"), "key-number-1").statusCode());
      assertEquals(1, served.json("/api/jobs/" + job + "/events").size());
    }
  }

  /** The file is as a kill leaves it between the commit of the effect and that of the answer. */
  @Test
  void whatWasDoneWithoutAnAnswerIsSaidToBeDoneAndNotDoneAgain() throws Exception {
    long job;
    try (Served served = new Served(directory)) {
      job = served.job().id();
      assertEquals(201, keyed(served, EVENTS, note("a"), "key-number-1").statusCode());
    }
    SqlFile.change(
        directory, "UPDATE answered_request SET status = NULL, media_type = NULL, body = NULL");
    try (Served served = new Served(directory)) {
      HttpResponse<String> second = keyed(served, EVENTS, note("a"), "key-number-1");
      assertEquals(409, second.statusCode());
      assertEquals("Done already", Served.tree(second).get("title").asText());
      assertEquals(1, served.json("/api/jobs/" + job + "/events").size());
    }
  }

  @Test
  void whatWasRefusedMayBeSentAgainAfterARestartToo() throws Exception {
    try (Served served = new Served(directory)) {
      assertEquals(400, keyed(served, EVENTS, note("a"), "key-number-1").statusCode());
    }
    try (Served served = new Served(directory)) {
      served.job();
      assertEquals(201, keyed(served, EVENTS, note("a"), "key-number-1").statusCode());
    }
  }

  @Test
  void answersWithSecretsAreNotStored() throws Exception {
    String token;
    try (Served served = ShopPeople.served(directory)) {
      String boss = new ShopPeople(served).signedIn("Boss", Role.ADMINISTRATOR);
      HttpResponse<String> made =
          served.send(
              "POST",
              "/api/tokens",
              "{\"name\": \"scale\", \"rights\": [\"LOOK\"], \"days\": 3}",
              "Cookie",
              boss,
              Call.BY,
              "Boss",
              "Content-Type",
              "application/json",
              SentTwice.KEY,
              "key-number-1");
      token = Served.tree(made).get("secret").asText();
    }
    assertEquals(1, SqlFile.count(directory, "SELECT count(*) FROM answered_request"));
    assertEquals(
        0,
        SqlFile.count(directory, "SELECT count(*) FROM answered_request WHERE body IS NOT NULL"),
        "the answer with the secret " + token.length() + " long");
  }

  @Test
  void whatWasRefusedMayBeSentAgain() throws Exception {
    try (Served served = new Served(directory)) {
      assertEquals(400, keyed(served, EVENTS, note("a"), "key-number-1").statusCode());
      served.job();
      assertEquals(201, keyed(served, EVENTS, note("a"), "key-number-1").statusCode());
    }
  }

  /** Five hundred requests, two for each change, by four callers in a drawn order. */
  @Test
  void doubleSendsAtOnceAreDoneOnce() throws Exception {
    ExecutorService callers = Executors.newFixedThreadPool(4);
    try (Served served = new Served(directory)) {
      long job = served.job().id();
      List<Callable<Integer>> sends = new ArrayList<>();
      for (int i = 0; i < 2 * CHANGES; i++) {
        int change = i / 2;
        sends.add(
            () -> keyed(served, EVENTS, note("n" + change), "key-number-" + change).statusCode());
      }
      List<Callable<Integer>> mixed = nearlyInOrder(sends);
      List<Integer> codes = new ArrayList<>();
      for (Future<Integer> answer : callers.invokeAll(mixed)) {
        codes.add(answer.get());
      }
      assertTrue(codes.stream().allMatch(code -> code == 201 || code == 409), codes::toString);
      assertEquals(CHANGES, served.json("/api/jobs/" + job + "/events").size());
    } finally {
      callers.shutdown();
    }
  }

  /** Each pair stays close together, so that many arrive while their like is being done. */
  private static <T> List<T> nearlyInOrder(List<T> all) {
    List<T> mixed = new ArrayList<>(all);
    Random random = new Random(5);
    for (int i = 0; i + 3 < mixed.size(); i++) {
      int other = i + random.nextInt(3);
      T kept = mixed.get(i);
      mixed.set(i, mixed.get(other));
      mixed.set(other, kept);
    }
    return mixed;
  }
}
