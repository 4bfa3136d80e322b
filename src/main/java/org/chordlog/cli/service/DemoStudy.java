package org.chordlog.cli.service;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.locks.LockSupport;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The people of the demo who measure a gauge study while one is running at its station: they look
 * at the study's page for who measures what, and do it at the simulator.
 */
final class DemoStudy implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(DemoStudy.class);
  private static final Duration PATIENCE = Duration.ofSeconds(10);
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final long LOOK_NANOS = 30_000_000L;
  private static final long AGAIN_NANOS = 30_000_000_000L;
  private static final long STORED_NANOS = 2_000_000_000L;

  /** Longer than a piece is at the bridge, of the scenario's time. */
  private static final double HANDLING_NANOS = 8e9;

  /** The simulator, told a line; what it answers. */
  interface Told {
    String tell(String line) throws IOException;
  }

  private final Told simulator;
  private final URI service;
  private final HttpClient client = HttpClient.newHttpClient();
  private final ExecutorService people = Executors.newSingleThreadExecutor(DemoStudy::thread);
  private final double speed;
  private boolean studying;

  /** {@code speed} is that of the simulator. */
  DemoStudy(Told simulator, double speed, URI service) {
    this.speed = speed;
    this.simulator = simulator;
    this.service = service;
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "demo-study");
    thread.setDaemon(true);
    return thread;
  }

  void work() {
    people.execute(this::look);
  }

  private void look() {
    while (!Thread.currentThread().isInterrupted()) {
      LockSupport.parkNanos(LOOK_NANOS);
      try {
        lookOnce();
      } catch (IOException e) {
        LOG.atDebug().setCause(e).log("the study of the demo waits");
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private void lookOnce() throws IOException, InterruptedException {
    JsonNode running = get("/api/stations/" + DemoStation.NAME).path("study");
    if (running.isObject() != studying) {
      studying = running.isObject();
      String unused = simulator.tell(studying ? "study begin" : "study end");
      if (studying) {
        leaveOut("/api/studies/" + running.path("id").asLong());
      }
    }
    if (studying) {
      next("/api/studies/" + running.path("id").asLong());
    }
  }

  /** A piece of the job that was at the bridge as the study began is none of it. */
  private void leaveOut(String path) throws IOException, InterruptedException {
    JsonNode before = get(path).path("lastMeasurementId");
    LockSupport.parkNanos(Math.round(HANDLING_NANOS / speed));
    JsonNode last = get(path).path("lastMeasurementId");
    if (!last.equals(before)) {
      String body =
          "{\"measurementId\": %s, \"reason\": \"a piece of the job\"}".formatted(last.asLong());
      HttpRequest request =
          HttpRequest.newBuilder(service.resolve(path + "/measure-again"))
              .timeout(PATIENCE)
              .header("Content-Type", "application/json")
              .header("Chordlog-By", "demo")
              .POST(BodyPublishers.ofString(body))
              .build();
      var unused = client.send(request, BodyHandlers.discarding());
    }
  }

  private void next(String path) throws IOException, InterruptedException {
    JsonNode study = get(path);
    JsonNode next = study.path("next");
    boolean due = !next.hasNonNull("notBefore") || passed(next.path("notBefore").asText());
    if (next.isObject() && due && study.path("state").asText().equals("RUNNING")) {
      String done = simulator.tell("study done");
      String unused = simulator.tell("measure " + line(next, study));
      awaitDone(done);
      awaitMore(path, study.path("measured").asInt());
    }
  }

  private static boolean passed(String time) {
    return Instant.parse(time).isBefore(Instant.now());
  }

  private String line(JsonNode next, JsonNode study) throws IOException, InterruptedException {
    String line =
        plain(next, "operator") + ", " + plain(next, "part") + ", " + plain(next, "place");
    return study.path("onMasters").asBoolean() ? line + ", " + masterMm(study) : line;
  }

  /** Commas tell the simulator's words apart. */
  private static String plain(JsonNode next, String field) {
    return next.path(field).asText().replace(',', ' ');
  }

  private double masterMm(JsonNode study) throws IOException, InterruptedException {
    String part = study.path("next").path("part").asText();
    for (JsonNode master : get("/api/masters")) {
      if (master.path("name").asText().equals(part)) {
        return master.path("radiusMm").asDouble();
      }
    }
    return study.path("nominalMm").asDouble();
  }

  private void awaitDone(String before) throws IOException {
    long deadline = System.nanoTime() + AGAIN_NANOS;
    while (System.nanoTime() < deadline && simulator.tell("study done").equals(before)) {
      LockSupport.parkNanos(LOOK_NANOS);
    }
  }

  /** What comes of it is there soon after the bridge is off; one that was refused is told again. */
  private void awaitMore(String path, int measured) throws IOException, InterruptedException {
    long deadline = System.nanoTime() + STORED_NANOS;
    while (System.nanoTime() < deadline && !Thread.currentThread().isInterrupted()) {
      JsonNode study = get(path);
      if (study.path("measured").asInt() != measured
          || !study.path("state").asText().equals("RUNNING")) {
        return;
      }
      LockSupport.parkNanos(LOOK_NANOS);
    }
  }

  private JsonNode get(String path) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(service.resolve(path)).timeout(PATIENCE).GET().build();
    return JSON.readTree(client.send(request, BodyHandlers.ofString()).body());
  }

  @Override
  public void close() {
    people.shutdownNow();
  }
}
