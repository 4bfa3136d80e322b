package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import io.javalin.router.Endpoint;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.chordlog.account.Right;
import org.chordlog.store.Some;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Sql;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Problems;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.SentTwice;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a repeated request is told where the first was slow, or its answer is long. */
final class RepeatedRequestTest {
  private static final String PATH = "/api/change";
  private static final int LONG = 3_000_000;

  @TempDir Path directory;
  private final HttpClient client = HttpClient.newHttpClient();
  private final AtomicInteger handled = new AtomicInteger();
  private SqliteStore store;
  private @Nullable Javalin server;

  @BeforeEach
  void open() {
    store = SqliteStore.open(directory, Some.QUICK);
  }

  @AfterEach
  void close() {
    Objects.requireNonNull(server).stop();
    store.close();
  }

  /** The first is given up by whoever waits for it, and is written afterwards. */
  @Test
  void theSecondWaitsForAChangeThatIsStillBeingWritten() throws Exception {
    CountDownLatch late = new CountDownLatch(1);
    serve(route().does(call -> writeAfter(late)));
    assertEquals(503, sent().statusCode());
    CompletableFuture<HttpResponse<String>> second =
        client.sendAsync(request(), BodyHandlers.ofString());
    assertFalse(second.isDone());
    late.countDown();
    assertEquals(409, second.join().statusCode());
    assertTrue(second.join().body().contains("Done already"), second.join().body());
    assertEquals(1, changes());
    assertEquals(1, handled.get());
  }

  @Test
  void aSlowChangeThatWasNotWrittenAfterAllIsDoneWhenItIsSentAgain() throws Exception {
    CountDownLatch late = new CountDownLatch(1);
    serve(route().does(call -> failOnceAfter(late)));
    assertEquals(503, sent().statusCode());
    late.countDown();
    assertEquals(204, sent().statusCode());
    assertEquals(1, changes());
  }

  @Test
  void aLongAnswerIsGivenWholeAndNotCutTheSecondTime() throws Exception {
    serve(route().sends("text/plain", this::writeAndSay));
    assertEquals(LONG, sent().body().length());
    HttpResponse<String> second = sent();
    assertEquals(409, second.statusCode());
    assertTrue(second.body().contains("Done already"), second.body());
    assertEquals(1, changes());
  }

  @Test
  void aLongAnswerOfWhatChangesNothingIsGivenAgain() throws Exception {
    serve(route().sends("text/plain", RepeatedRequestTest::say));
    assertEquals(LONG, sent().body().length());
    assertEquals(LONG, sent().body().length());
  }

  private static Route.Draft route() {
    return Route.post(Right.MEASURE, PATH, "Changes something");
  }

  private void writeAfter(CountDownLatch late) {
    handled.incrementAndGet();
    int unused = writer().call(change(late), 1);
  }

  private void failOnceAfter(CountDownLatch late) {
    boolean first = handled.getAndIncrement() == 0;
    int unused =
        writer()
            .call(
                connection -> {
                  int done = change(late).run(connection);
                  if (first) {
                    throw new IllegalStateException("the first fails");
                  }
                  return done;
                },
                1);
  }

  private void writeAndSay(Call call) {
    int unused = writer().call(change(new CountDownLatch(0)), 15);
    say(call);
  }

  private static void say(Call call) {
    call.ctx().contentType("text/plain").result("x".repeat(LONG));
  }

  private static Sql.Body<Integer> change(CountDownLatch late) {
    return connection -> {
      try {
        late.await();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      return Sql.update(connection, "INSERT INTO done DEFAULT VALUES");
    };
  }

  private long changes() {
    return store.database().write(c -> Sql.number(c, "SELECT count(*) FROM done"));
  }

  private Writer writer() {
    return ((Writing) store.database().writes()).writer();
  }

  private void serve(Route route) {
    int unused =
        store
            .database()
            .write(c -> Sql.update(c, "CREATE TEMP TABLE done (id INTEGER PRIMARY KEY)"));
    Route once = new SentTwice(store.answeredRequests()).around(route);
    Javalin made =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              Problems.register(config.routes);
              config.routes.exception(StoreException.class, (e, ctx) -> ctx.status(503));
              config.routes.addEndpoint(
                  Endpoint.create(once.method(), once.path()).handler(once.handler()));
            });
    server = made.start("127.0.0.1", 0);
  }

  private HttpResponse<String> sent() throws IOException, InterruptedException {
    return client.send(request(), BodyHandlers.ofString());
  }

  private HttpRequest request() {
    return HttpRequest.newBuilder(
            URI.create("http://127.0.0.1:" + Objects.requireNonNull(server).port() + PATH))
        .header(SentTwice.KEY, "key-number-1")
        .header(Call.BY, "tester")
        .POST(HttpRequest.BodyPublishers.noBody())
        .build();
  }
}
