package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.Closeable;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.chordlog.Await;
import org.chordlog.web.http.Call;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Four ports are listened to for pages at once, two more wait, in whichever way they are asked. */
final class PortsAtOnceTest {
  private static final int AT_ONCE = 4;
  private static final int WAITING = 2;

  @TempDir Path directory;

  /** A device server that takes every connection and sends nothing. */
  private static final class Silent implements Closeable {
    final ServerSocket door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    final List<Socket> taken = Collections.synchronizedList(new ArrayList<>());
    private final Thread thread = new Thread(this::take, "silent device");

    Silent() throws IOException {
      thread.start();
    }

    private void take() {
      try {
        while (true) {
          taken.add(door.accept());
        }
      } catch (IOException e) {
        // closed
      }
    }

    @Override
    public void close() throws IOException {
      door.close();
      for (Socket each : List.copyOf(taken)) {
        each.close();
      }
    }
  }

  private static CompletableFuture<HttpResponse<String>> ask(
      Served served, Silent device, String way) {
    String body =
        "{\"port\": \"127.0.0.1:%d\", \"seconds\": 10}".formatted(device.door.getLocalPort());
    HttpRequest request =
        HttpRequest.newBuilder(served.uri("/api/ports/" + way))
            .headers(Call.BY, "tester", "Content-Type", "application/json")
            .POST(BodyPublishers.ofString(body))
            .build();
    return served.client.sendAsync(request, BodyHandlers.ofString());
  }

  /** How many were told to come back in 5 s. */
  private static long refused(List<CompletableFuture<HttpResponse<String>>> asked) {
    return asked.stream()
        .map(CompletableFuture::join)
        .filter(each -> each.statusCode() == 503)
        .filter(each -> each.headers().firstValue("Retry-After").orElse("").equals("5"))
        .count();
  }

  @Test
  void oneMoreThanThatIsToldToComeBack() throws Exception {
    List<CompletableFuture<HttpResponse<String>>> asked = new ArrayList<>();
    try (Served served = new Served(directory)) {
      try (Silent device = new Silent()) {
        List<String> ways = List.of("hear", "registers");
        for (int i = 0; i < AT_ONCE + WAITING + 1; i++) {
          asked.add(ask(served, device, ways.get(i % ways.size())));
        }
        Await.until(() -> asked.stream().anyMatch(CompletableFuture::isDone));
        Await.until(() -> device.taken.size() == AT_ONCE);
        assertEquals(1, refused(asked.stream().filter(CompletableFuture::isDone).toList()));
      }
      assertEquals(1, refused(asked));
    }
  }
}
