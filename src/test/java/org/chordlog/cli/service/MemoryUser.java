package org.chordlog.cli.service;

import io.javalin.Javalin;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.chordlog.timer.TimedWork;
import org.slf4j.LoggerFactory;

/** A program that uses its memory up in one of its threads, and has others that go on. */
final class MemoryUser {
  private MemoryUser() {}

  /** Where: thread, task, timer, caught or request. */
  public static void main(String[] arguments) throws Exception {
    OutOfMemory.endsTheProgram();
    switch (arguments[0]) {
      case "thread" -> new Thread(MemoryUser::useUp, "writer").start();
      case "task" -> Executors.newSingleThreadExecutor().execute(MemoryUser::useUp);
      case "timer" -> timer();
      case "caught" -> caught();
      default -> request();
    }
    new CountDownLatch(1).await();
  }

  private static void useUp() {
    Object[] kept = {};
    while (true) {
      kept = new Object[] {kept, new byte[100_000]};
    }
  }

  private static void timer() {
    var unused =
        Executors.newSingleThreadScheduledExecutor()
            .scheduleWithFixedDelay(TimedWork.of(MemoryUser::useUp), 0, 1, TimeUnit.DAYS);
  }

  private static void caught() {
    var unused =
        CompletableFuture.runAsync(MemoryUser::useUp)
            .whenComplete(
                (done, e) ->
                    LoggerFactory.getLogger(MemoryUser.class).atError().setCause(e).log("lost"));
  }

  private static void request() throws Exception {
    Javalin server =
        Javalin.create(
                config -> {
                  config.startup.showJavalinBanner = false;
                  config.jetty.port = 0;
                  config.routes.get("/", ctx -> useUp());
                })
            .start();
    URI uri = URI.create("http://127.0.0.1:" + server.port() + "/");
    HttpClient client = HttpClient.newHttpClient();
    System.out.println(
        client.send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString()).statusCode());
  }
}
