package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.HttpURLConnection;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import org.chordlog.Await;
import org.chordlog.Patience;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Clients that ask too much, ask nonsense, or never read: the readings go on. All of them at one
 * service, in any order, of which everything is compared at the end.
 */
final class FloodIT {
  private static final int STATIONS = 4;
  private static final int FLOODERS = 16;
  private static final int CALLS = 300;
  private static final int CONNECTIONS = 300;
  private static final int MOST_EVENT_CLIENTS = 32;
  private static final Set<Integer> EXPECTED = Set.of(200, 400, 404, 405, 413, 415, 429, 503);
  private static final List<String> PATHS =
      List.of(
          "/api/stations",
          "/api/jobs/1/statistics",
          "/api/jobs/1/charts/INDIVIDUALS?width=1200&height=600",
          "/api/jobs/1/report.pdf",
          "/api/jobs/1/readings?limit=1000",
          "/api/readings?limit=1000",
          "/api/jobs/1/charts/NONSENSE",
          "/api/jobs/99999999999999999999",
          "/api/readings?limit=-1",
          "/metrics",
          "/health",
          "/no/such/thing");

  @TempDir static Path directory;
  private static Scene scene;

  @BeforeAll
  static void serve() throws Exception {
    scene = new Scene(directory, STATIONS);
    scene.serve("-Xmx128m");
    scene.awaitReadings(STATIONS);
  }

  @AfterAll
  static void everyReadingIsKept() throws Exception {
    try (Scene ended = scene) {
      ended.prove();
    }
  }

  @Test
  void aFloodOfRequestsDoesNotTouchTheReadings() throws Exception {
    Map<Integer, Integer> answers = new ConcurrentHashMap<>();
    Queue<Exception> unanswered = new ConcurrentLinkedQueue<>();
    AtomicBoolean enough = new AtomicBoolean();
    List<Thread> flooders = new ArrayList<>();
    for (int i = 0; i < FLOODERS; i++) {
      Random random = new Random(i);
      Thread flooder =
          new Thread(() -> flood(scene.service(), random, answers, unanswered, enough));
      flooder.start();
      flooders.add(flooder);
    }
    scene.awaitReadings(30);
    Await.until(() -> answers.values().stream().mapToInt(n -> n).sum() >= CALLS, () -> answers);
    scene.awaitReadings(STATIONS);
    enough.set(true);
    for (Thread flooder : flooders) {
      flooder.join();
    }
    System.out.println("flood: answers by status " + answers);
    assertEquals(List.of(), List.copyOf(unanswered));
    assertTrue(EXPECTED.containsAll(answers.keySet()), answers::toString);
    assertTrue(answers.keySet().containsAll(Set.of(200, 400, 404, 413)), answers::toString);
  }

  private static void flood(
      ServiceProcess service,
      Random random,
      Map<Integer, Integer> answers,
      Queue<Exception> unanswered,
      AtomicBoolean enough) {
    while (!enough.get()) {
      try {
        answers.merge(ask(service, random), 1, Integer::sum);
      } catch (IOException e) {
        unanswered.add(e);
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  /** The status answered. */
  private static int ask(ServiceProcess service, Random random)
      throws IOException, InterruptedException {
    int choice = random.nextInt(PATHS.size() + 2);
    if (choice == PATHS.size()) {
      return tooLarge(service.address());
    }
    if (choice > PATHS.size()) {
      return service.post("/api/jobs", "{\"name\": [[[[").statusCode();
    }
    return service.get(PATHS.get(choice)).statusCode();
  }

  /**
   * Tells that a body of 200,000 bytes will come and sends the first byte only: an answer before
   * the rest is read is then never lost with a connection that is closed while the client sends.
   */
  private static int tooLarge(URI address) throws IOException {
    String request =
        """
        POST /api/jobs HTTP/1.1\r
        Host: %s\r
        Chordlog-By: harness\r
        Content-Type: application/json\r
        Content-Length: 200000\r
        \r
        x"""
            .formatted(address.getAuthority());
    try (Socket socket = new Socket(address.getHost(), address.getPort())) {
      socket.setSoTimeout((int) Patience.now().toMillis());
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      BufferedReader answer =
          new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
      String status = String.valueOf(answer.readLine());
      return Integer.parseInt(status.split(" ", 3)[1]);
    }
  }

  @Test
  void clientsThatNeverReadHoldUpNobody() throws Exception {
    List<Socket> stuck = new ArrayList<>();
    for (int i = 0; i < MOST_EVENT_CLIENTS - 1; i++) {
      stuck.add(EventNotes.neverReading(scene.service().address()));
    }
    Await.until(() -> clients() == MOST_EVENT_CLIENTS, FloodIT::clients);
    assertEquals(429, scene.service().get("/api/events").statusCode());
    scene.awaitReadings(100);
    for (Socket each : stuck) {
      each.close();
    }
    Await.until(() -> clients() == 1);
  }

  /** More connections than are taken: the idle ones go, and a page gets through. */
  @Test
  void idleConnectionsShutNobodyOut() throws Exception {
    URI address = scene.service().address();
    List<Socket> idle = new ArrayList<>();
    for (int i = 0; i < CONNECTIONS; i++) {
      idle.add(new Socket(address.getHost(), address.getPort()));
    }
    scene.awaitReadings(STATIONS);
    assertEquals(200, patient(address.resolve("/health")));
    for (Socket each : idle) {
      each.close();
    }
  }

  private static int patient(URI address) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) address.toURL().openConnection();
    connection.setReadTimeout((int) (3 * Patience.now().toMillis()));
    return connection.getResponseCode();
  }

  private static int clients() throws Exception {
    return scene.json("/health").get("eventClients").asInt();
  }
}
