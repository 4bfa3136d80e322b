package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.chordlog.Await;
import org.chordlog.radius.Chord;
import org.chordlog.simulator.Contact;
import org.chordlog.simulator.Scenario;
import org.chordlog.simulator.ScenarioFile;
import org.chordlog.simulator.Simulator;
import org.chordlog.simulator.Simulators;
import org.chordlog.simulator.StudyCrew;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A study from plan to result: the simulator's people, of known bias and scatter, measure what the
 * service asks for, over the real pseudo-terminal. The invented truth is inside the intervals.
 */
@Tag("slow")
final class StudyOnSimulatorTest {
  private static final double SPEED = 5;
  private static final double SCATTER_MM = 0.004;
  private static final Map<String, Double> BIAS_MM =
      Map.of("Ann", -0.009, "Bo", 0.001, "Cy", 0.008);
  private static final int PIECES = 6;
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;
  private final HttpClient client = HttpClient.newHttpClient();
  private final ConcurrentLinkedQueue<Contact> truth = new ConcurrentLinkedQueue<>();
  private URI base = URI.create("http://127.0.0.1");

  private static StudyCrew crew() {
    return new StudyCrew(
        BIAS_MM, new StudyCrew.Scatter(SCATTER_MM, 0), new StudyCrew.Parts(6, 0, 0), 11);
  }

  @Test
  void threePeopleAreFoundAsTheyAre() throws Exception {
    Scenario scenario = ScenarioFile.read(ScenarioFile.DEMO);
    Store store = Stores.open(folder);
    assertEquals(1, new DemoRecords(scenario, store).prepare());
    try (Simulators simulators = new Simulators();
        Simulator simulator = Simulator.onTerminal(scenario, SPEED, 5, null, truth::add)) {
      simulator.crew(crew());
      assertEquals("study begin", simulator.told("study begin"));
      assertEquals("study flat", simulator.told("study flat"));
      simulators.start(simulator);
      String file = DemoStation.yaml(scenario, simulator.address(), SPEED);
      try (Service service =
          Service.on(
              store,
              stations -> StationFile.parse(file, "test").forEach(stations::add),
              WebSettings.onLoopback(0),
              StationKeeper.forThisRun(),
              StationClock.system(),
              null)) {
        base = URI.create("http://127.0.0.1:" + service.port());
        Await.until(() -> post("/api/stations/demo/zero", "").statusCode() == 200);
        measured(simulator, planned());
      }
    }
  }

  private String planned() throws Exception {
    List<String> pieces = IntStream.rangeClosed(1, PIECES).mapToObj(i -> "\"P" + i + "\"").toList();
    String plan =
        """
        {"station": "demo", "name": "three people", "kind": "CROSSED", "parts": %s,
         "operators": ["Ann", "Bo", "Cy"], "repeats": 2, "jobId": 1, "seed": 3}"""
            .formatted(pieces);
    HttpResponse<String> made = post("/api/studies", plan);
    assertEquals(201, made.statusCode(), made.body());
    String path = "/api/studies/" + JSON.readTree(made.body()).path("id").asLong();
    assertEquals(200, post(path + "/state", "{\"state\": \"RUNNING\"}").statusCode());
    return path;
  }

  private void measured(Simulator simulator, String path) throws Exception {
    try (DemoStudy people = new DemoStudy(simulator::told, SPEED, base)) {
      people.work();
      for (int done = 0; done < 6 * 3 * 2; done = get(path).path("measured").asInt()) {
        int before = done;
        Await.until(() -> get(path).path("measured").asInt() > before, () -> get(path));
      }
      Await.until(() -> get(path).path("next").isNull(), () -> get(path));
    }
    JsonNode result = get(path + "/result");
    assertEquals(6 * 3 * 2, result.path("measurements").size());
    contains(result, "EV", SCATTER_MM / slopeAt(1800));
    double squares = BIAS_MM.values().stream().mapToDouble(b -> b * b).sum();
    contains(result, "AV", Math.sqrt(squares / 2) / slopeAt(1800));
    double[] radii =
        IntStream.rangeClosed(1, PIECES)
            .mapToDouble(i -> crew().radiusMm(1800, "P" + i, ""))
            .toArray();
    double mean = IntStream.range(0, PIECES).mapToDouble(i -> radii[i]).average().orElseThrow();
    double variance =
        IntStream.range(0, PIECES).mapToDouble(i -> (radii[i] - mean) * (radii[i] - mean)).sum()
            / (PIECES - 1);
    contains(result, "PV", Math.sqrt(variance));
    assertTrue(
        result.path("budget").path("says").asText().contains("operators"), result.toString());
    assertTrue(truth.stream().anyMatch(each -> each.lot().isEmpty() && each.piece() == 0));
  }

  /** Depth a mm of centreline radius. */
  private static double slopeAt(double radiusMm) {
    return (depthMm(radiusMm - 0.5) - depthMm(radiusMm + 0.5));
  }

  private static double depthMm(double centrelineMm) {
    return Chord.depthMm(1 / (centrelineMm + 30.15), 200, 0);
  }

  private static void contains(JsonNode result, String name, double value) {
    for (JsonNode each : result.path("figures")) {
      if (each.path("name").asText().equals(name)) {
        double upper = each.path("upper").isNull() ? 1e9 : each.path("upper").asDouble();
        assertTrue(each.path("lower").asDouble() <= value && value <= upper, value + " " + each);
        return;
      }
    }
    throw new AssertionError("no figure " + name);
  }

  private JsonNode get(String path) throws Exception {
    HttpRequest request = HttpRequest.newBuilder(base.resolve(path)).GET().build();
    return JSON.readTree(client.send(request, BodyHandlers.ofString()).body());
  }

  private HttpResponse<String> post(String path, String body) throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(base.resolve(path))
            .header("Content-Type", "application/json")
            .header("Chordlog-By", "tester")
            .POST(BodyPublishers.ofString(body))
            .build();
    return client.send(request, BodyHandlers.ofString());
  }
}
