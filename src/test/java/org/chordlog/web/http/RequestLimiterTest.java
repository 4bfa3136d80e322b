package org.chordlog.web.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.chordlog.Await;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Dear requests over real HTTP, held by a latch. */
final class RequestLimiterTest {
  private static final int AT_ONCE = 2;
  private static final int WAITING = 1;

  private final CountDownLatch released = new CountDownLatch(1);
  private final AtomicInteger inside = new AtomicInteger();
  private final AtomicInteger most = new AtomicInteger();
  private final RequestLimiter room = new RequestLimiter("reports", AT_ONCE, WAITING, 7);
  private final HttpClient client = HttpClient.newHttpClient();
  private Javalin server;

  @BeforeEach
  void start() {
    server =
        Javalin.create(
                config -> {
                  config.startup.showJavalinBanner = false;
                  config.jetty.port = 0;
                  Problems.register(config.routes);
                  config.routes.get("/dear", room.around(ctx -> hold()));
                  config.routes.get("/cheap", ctx -> ctx.result("well"));
                  config.routes.get("/bad", room.around(ctx -> fail()));
                })
            .start();
  }

  @AfterEach
  void stop() {
    released.countDown();
    server.stop();
  }

  private void hold() throws InterruptedException {
    most.accumulateAndGet(inside.incrementAndGet(), Math::max);
    released.await();
    inside.decrementAndGet();
  }

  private static void fail() {
    throw new IllegalStateException("broken");
  }

  @Test
  void oneTooManyIsRefusedAtOnceAndToldWhenToAskAgain() throws Exception {
    List<CompletableFuture<HttpResponse<String>>> held = new ArrayList<>();
    for (int i = 0; i < AT_ONCE + WAITING; i++) {
      held.add(ask("/dear"));
    }
    Await.until(() -> room.taken() == AT_ONCE + WAITING);
    HttpResponse<String> refused = ask("/dear").join();
    assertEquals(503, refused.statusCode());
    assertEquals("7", refused.headers().firstValue("Retry-After").orElseThrow());
    assertTrue(refused.body().contains("Ask again in a moment"), refused::body);
    assertEquals(200, ask("/cheap").join().statusCode());
    released.countDown();
    for (CompletableFuture<HttpResponse<String>> each : held) {
      assertEquals(200, each.join().statusCode());
    }
    assertEquals(AT_ONCE, most.get());
    assertEquals(200, ask("/dear").join().statusCode());
  }

  @Test
  void aFailureLeavesItsPlace() {
    for (int i = 0; i <= AT_ONCE + WAITING; i++) {
      assertEquals(500, ask("/bad").join().statusCode());
    }
  }

  private CompletableFuture<HttpResponse<String>> ask(String path) {
    URI uri = URI.create("http://127.0.0.1:" + server.port() + path);
    return client.sendAsync(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString());
  }
}
