package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.jspecify.annotations.Nullable;

/** A rig with indicators that send all the time, the service on it, and a client that notes. */
final class Scene implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final double PER_SECOND = 80;
  private static final int AIR_FRAMES = 8;
  private static final int CYCLE_FRAMES = 20;
  private static final long CYCLES_TO_REST = 3;
  static final double REST_SECONDS = 0.06;

  final Rig rig;
  final Indicators indicators;
  final Proof proof = new Proof();
  private final List<Long> jobs;
  private @Nullable ServiceProcess service;
  private @Nullable EventNotes notes;

  Scene(Path directory, int stations) throws IOException {
    rig = new Rig(directory, stations, REST_SECONDS);
    jobs = rig.prepare();
    indicators = new Indicators(rig, stations, PER_SECOND, AIR_FRAMES, CYCLE_FRAMES);
    indicators.start();
  }

  /** Starts the service from the jar, and listens from the last reading noted on. */
  void serve(String... options) throws IOException {
    take(ServiceProcess.serveBriefly(rig, options));
  }

  void take(ServiceProcess started) throws IOException {
    service = started;
    String query = "?lastEventId=" + proof.lastId();
    notes = EventNotes.listen(started.address(), query, proof::note);
  }

  ServiceProcess service() {
    return Objects.requireNonNull(service);
  }

  List<Long> jobs() {
    return jobs;
  }

  void awaitReadings(int more) throws Exception {
    int before = proof.announcedReadings();
    Await.until(
        () -> proof.announcedReadings() >= before + more,
        () -> proof.announcedReadings() - before + " of " + more + " readings");
  }

  void kill() throws Exception {
    service().kill();
    Objects.requireNonNull(notes).awaitEnd();
  }

  void stop() throws Exception {
    service().stop();
    Objects.requireNonNull(notes).awaitEnd();
  }

  JsonNode json(String path) throws Exception {
    return JSON.readTree(service().get(path).body());
  }

  /** Waits until a reason of the health contains that. */
  void awaitReason(String part) throws Exception {
    Await.until(
        () -> json("/health").get("reasons").toString().contains(part),
        () -> "'" + part + "' is not among " + json("/health").get("reasons"));
  }

  void awaitReady() throws Exception {
    Await.until(
        () -> service().get("/health").statusCode() == 200, () -> service().get("/health").body());
  }

  /** No piece is measured from now on, and whatever was measured is stored and announced. */
  void comeToRest() throws Exception {
    indicators.restInAir(true);
    long before = samples();
    Await.until(() -> samples() > before + CYCLES_TO_REST * CYCLE_FRAMES * jobs.size());
    Await.until(() -> json("/health").get("store").get("queuedCommands").asInt() == 0);
    Await.until(() -> proof.lastId() == kept());
  }

  private long samples() throws Exception {
    long samples = 0;
    for (JsonNode station : json("/api/stations")) {
      samples += station.get("samples").asLong();
    }
    return samples;
  }

  private long kept() {
    try (Store store = Stores.openForReading(rig.data())) {
      return store.readings().lastId();
    }
  }

  /** Stops the service and compares everything that was announced with what is stored. */
  void prove() throws Exception {
    comeToRest();
    List<String> said = statistics(service());
    stop();
    assertEquals(List.of(), proof.faults(rig.data()));
    long beforeListening = proof.firstId() - 1;
    assertEquals(proof.keptReadings() - beforeListening, proof.announcedReadings());
    assertEquals(anew(), said);
  }

  /** What another service says that has the readings alone. */
  private List<String> anew() throws Exception {
    Path copy = Files.createTempDirectory("anew");
    try {
      Rig other = rig.beside(copy);
      Proof.copyWithoutCheckpoints(rig.data(), other.data());
      try (ServiceHere second = new ServiceHere(other)) {
        return statistics(second);
      }
    } finally {
      Directories.delete(copy);
    }
  }

  private List<String> statistics(Serving from) throws Exception {
    List<String> said = new ArrayList<>();
    for (long job : jobs) {
      String path = "/api/jobs/" + job + "/statistics?scope=job";
      Await.until(() -> from.body(path).contains("\"behind\":0"));
      said.add(from.body(path));
      said.add(from.body("/api/jobs/" + job + "/charts/INDIVIDUALS?width=800&height=400"));
    }
    return said;
  }

  @Override
  public void close() {
    if (service != null) {
      service.close();
    }
    indicators.close();
  }
}
