package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.Await;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;
import org.chordlog.monitor.Monitor;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A service measures the pieces of the simulator, and its records go to a plant on a real database:
 * whatever is made of them is the same to the byte from both. The two have one clock here, since
 * reports bear the time of their printing; nothing else of them is left out of the comparison.
 */
@Tag("slow")
final class SameFromEdgeAndPlantTest {
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-26T22:00:00Z"), ZoneOffset.UTC);
  private static final Pattern ADDRESS = Pattern.compile("Chordlog is at (http://\\S+)/");
  private static final int PIECES = 50;

  private static final Deque<AutoCloseable> OPEN = new ArrayDeque<>();

  @TempDir static Path directory;
  private static Store store;
  private static Web edge;
  private static PlantWeb plant;

  @BeforeAll
  static void measureAndDeliver() throws Exception {
    Path data = directory.resolve("hall");
    measured(data);
    store = closedLater(Stores.open(data));
    ChartRenderer charts = closedLater(ChartRenderer.idle());
    Monitor monitor = closedLater(new Monitor(store));
    Stations stations = closedLater(new Stations(store, StationClock.system()));
    WebSettings settings = WebSettings.onLoopback(0);
    edge =
        closedLater(
            new Web(settings, store, stations, monitor, charts, CLOCK, StationKeeper.forThisRun()));
    edge.start();
    PlantRig rig = closedLater(new PlantRig()).with("Main works", "hall 1", store).complete();
    plant = closedLater(new PlantWeb(settings, rig.plant, charts, CLOCK));
    plant.start();
  }

  /** By the demo in a process of its own, which is then ended as a person does. */
  private static void measured(Path data) throws Exception {
    Path log = directory.resolve("log");
    List<String> command =
        ServiceProcess.java(System.getProperty("java.class.path"), "-Djava.awt.headless=true");
    command.addAll(List.of("org.chordlog.Main", "demo", "--port", "0", "--seed", "7"));
    command.addAll(List.of("--speed", "40", "--data", data.toString()));
    Process demo =
        Children.start(
            new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()));
    Await.until(
        () -> {
          Matcher address = ADDRESS.matcher(Files.readString(log));
          return address.find() && pieces(address.group(1)) >= PIECES;
        },
        () -> Files.readString(log));
    demo.destroy();
    Await.end(demo);
  }

  private static long pieces(String at) throws Exception {
    long pieces = 0;
    for (JsonNode each : json(URI.create(at + "/api/jobs?limit=50")).path("items")) {
      pieces += each.path("readings").asLong();
    }
    return pieces;
  }

  @AfterAll
  static void stop() throws Exception {
    while (!OPEN.isEmpty()) {
      OPEN.pop().close();
    }
  }

  /** Closed at the end, the last opened first, also where not all could be opened. */
  private static <T extends AutoCloseable> T closedLater(T opened) {
    OPEN.push(opened);
    return opened;
  }

  private static HttpResponse<byte[]> get(URI uri) throws Exception {
    return CLIENT.send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofByteArray());
  }

  private static JsonNode json(URI uri) throws Exception {
    return Json.shared().readTree(get(uri).body());
  }

  private static URI atEdge(String path) {
    return URI.create("http://127.0.0.1:" + edge.port() + path);
  }

  private static URI atPlant(String path) {
    return URI.create("http://127.0.0.1:" + plant.port() + "/edges/hall%201" + path);
  }

  private static List<Long> jobs() throws Exception {
    List<Long> ids = new ArrayList<>();
    json(atEdge("/api/jobs?limit=50"))
        .path("items")
        .forEach(each -> ids.add(each.path("id").asLong()));
    return ids;
  }

  /** Of both, and not empty. */
  private static byte[] same(String path) throws Exception {
    HttpResponse<byte[]> there = get(atEdge(path));
    HttpResponse<byte[]> here = get(atPlant(path));
    String body = new String(here.body(), StandardCharsets.UTF_8);
    assertEquals(200, there.statusCode(), path);
    assertEquals(200, here.statusCode(), path + ": " + body);
    assertEquals(
        there.headers().firstValue("Content-Type"), here.headers().firstValue("Content-Type"));
    assertTrue(there.body().length > 0, path);
    assertArrayEquals(there.body(), here.body(), path);
    return here.body();
  }

  @Test
  void figuresOfEveryJob() throws Exception {
    assertTrue(jobs().size() > 0, "jobs");
    for (long job : jobs()) {
      for (String path : List.of("", "/statistics", "/chart-facts", "/readings?limit=200")) {
        same("/api/jobs/" + job + path);
        same("/api/jobs/" + job + path + (path.contains("?") ? "&" : "?") + "unit=inch");
      }
    }
  }

  @Test
  void everyChartAsPictureAndWithItsPlaces() throws Exception {
    int pictures = 0;
    for (long job : jobs()) {
      for (JsonNode each : json(atEdge("/api/jobs/" + job + "/charts"))) {
        String one = "/api/jobs/" + job + "/charts/" + each.path("kind").asText();
        same(one + "?width=900&height=400");
        String picture = new String(same(one + "/picture.svg"), StandardCharsets.UTF_8);
        assertTrue(picture.contains("<svg"), one);
        pictures++;
      }
    }
    assertTrue(pictures >= 5, pictures + " charts");
  }

  @Test
  void everyMachineWithItsChart() throws Exception {
    JsonNode machines = json(atEdge("/api/machines"));
    assertTrue(machines.size() > 0, "machines");
    for (JsonNode each : machines) {
      String one = "/api/machines/" + each.path("machine").asText().replace(" ", "%20");
      same(one);
      same(one + "/chart?width=900&height=400");
      same(one + "/jobs");
    }
  }

  @Test
  void reportAndCertificateInBothUnits() throws Exception {
    for (long job : jobs()) {
      for (String asked : List.of("", "?unit=inch", "?certificate=true&zone=Europe/London")) {
        byte[] pdf = same("/api/jobs/" + job + "/report.pdf" + asked);
        assertEquals("%PDF", new String(pdf, 0, 4, StandardCharsets.US_ASCII));
      }
    }
  }

  @Test
  void filesForPrograms() throws Exception {
    for (long job : jobs()) {
      String one = "/api/jobs/" + job;
      byte[] rows = same(one + "/readings.csv");
      same(one + "/readings.csv?seal=true");
      same(one + "/statistics.csv");
      String qif = new String(same(one + "/results.qif"), StandardCharsets.UTF_8);
      assertTrue(qif.contains("QIFDocument"), qif.substring(0, Math.min(200, qif.length())));
      assertTrue(rows.length > 100, "readings");
    }
  }
}
