package org.chordlog.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.atomic.AtomicReference;
import org.chordlog.Await;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.notify.AlertWatch;
import org.chordlog.notify.Watched;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationFileKeeper;
import org.chordlog.station.Stations;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.WebSettings;

/** The real service on a free port: store on disk, one station "A" on a pseudo-terminal. */
final class Served implements AutoCloseable {
  final TerminalIndicator indicator;
  final Path stationFile;
  final Store store;
  final Stations stations;
  final Monitor monitor;
  final Web web;
  final HttpClient client = HttpClient.newHttpClient();
  private final ChartRenderer charts = ChartRenderer.idle();
  private long sequence;

  Served(Path directory) {
    this(directory, WebSettings.onLoopback(0));
  }

  Served(Path directory, WebSettings settings) {
    this(directory, settings, StationClock.system());
  }

  /** With a clock of its own for the stations. */
  Served(Path directory, WebSettings settings, StationClock clock) {
    store = Stores.open(directory);
    indicator = new TerminalIndicator(directory.resolve("indicator"));
    stationFile = written(directory.resolve("stations.yaml"), file(indicator.port()));
    stations = new Stations(store, clock);
    monitor = new Monitor(store);
    stations.subscribe(monitor::accept);
    web =
        new Web(
            SamePort.lend(settings),
            store,
            stations,
            monitor,
            charts,
            Clock.systemUTC(),
            new StationFileKeeper(stationFile));
    web.start();
    StationFile.read(stationFile).forEach(stations::add);
  }

  /** From now on alerts are watched for, in rounds of a second. */
  AlertWatch watch() {
    Watched watched = new Watched(store, stations::statuses, monitor, Watched.Outside.UNKNOWN);
    AlertWatch watch =
        new AlertWatch(watched, StationClock.system()::wallMicros, AlertWatch.Times.AT_ONCE);
    web.watchedBy(watch::counts);
    watch.start();
    return watch;
  }

  private static Path written(Path file, String text) {
    try {
      return Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String file(Path port) {
    return """
        stations:
          - name: A
            machine: three-roll bender
            link: {kind: serial, port: %s}
            profile: signed-mm-lines
            direction: counts_up
            indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.7}
            bridge: {name: long, spanMm: 200, spanUncertaintyMm: 0.02, footRadiusMm: 5}
        """
        .formatted(port);
  }

  URI uri(String path) {
    return URI.create("http://127.0.0.1:" + web.port() + path);
  }

  HttpResponse<String> get(String path, String... headers) throws Exception {
    return send(HttpRequest.newBuilder(uri(path)).GET(), headers);
  }

  JsonNode json(String path) throws Exception {
    HttpResponse<String> answer = get(path);
    if (answer.statusCode() != 200) {
      throw new AssertionError(path + " answered " + answer.statusCode() + ": " + answer.body());
    }
    return tree(answer);
  }

  static JsonNode tree(HttpResponse<String> answer) throws IOException {
    return Json.shared().readTree(answer.body());
  }

  /** As a page of this service posts. */
  HttpResponse<String> post(String path, String body) throws Exception {
    return send("POST", path, body, Call.BY, "J%C3%B6rg", "Content-Type", "application/json");
  }

  HttpResponse<String> put(String path, String body) throws Exception {
    return send("PUT", path, body, Call.BY, "tester", "Content-Type", "application/json");
  }

  HttpResponse<String> send(String method, String path, String body, String... headers)
      throws Exception {
    return send(
        HttpRequest.newBuilder(uri(path)).method(method, BodyPublishers.ofString(body)), headers);
  }

  private HttpResponse<String> send(HttpRequest.Builder request, String... headers)
      throws Exception {
    HttpRequest built = headers.length == 0 ? request.build() : request.headers(headers).build();
    return client.send(built, BodyHandlers.ofString());
  }

  /** An open job on station A, selected. */
  Job job() {
    return selected(Some.job("hoops", "three-roll bender"));
  }

  /** As {@link #job()}, of arcs of that developed length. */
  Job arcs(double developedLengthMm) {
    OrderDetails details = new OrderDetails(null, null, developedLengthMm, null);
    return selected(Some.job("hoops", "three-roll bender").withDetails(details));
  }

  /** That one, selected on station A. */
  Job selected(Job added) {
    Job job = store.jobs().add(added, "tester");
    store.jobs().activate("A", job.id());
    stations.at("A").refresh();
    return job;
  }

  /** The bridge was on a flat that shows 0, was zeroed there, and hangs in free air again. */
  void zeroAndFree() throws Exception {
    zeroAndFree("A", indicator);
  }

  /**
   * The same at that station. It is put on the flat only once free air is known: values that come
   * in one lump show no rest, however many, and the flat would be taken for free air from then on.
   */
  void zeroAndFree(String station, TerminalIndicator of) throws Exception {
    Await.until(() -> stations.at(station).inFreeAir(), () -> stations.status(station));
    of.show(0);
    AtomicReference<String> refusal = new AtomicReference<>("");
    Await.until(() -> zeroed(station, refusal), refusal::get);
    of.show(TerminalIndicator.FREE_MM);
  }

  /** Not over HTTP, which takes the processor some milliseconds each time. */
  private boolean zeroed(String station, AtomicReference<String> last) {
    try {
      stations.at(station).takeZero("Jörg");
      return true;
    } catch (BadInput | IllegalStateException e) {
      last.set(String.valueOf(e.getMessage()));
      return false;
    }
  }

  /** Whether the plunger hangs in free air by what the station says. */
  boolean free() {
    return stations.at("A").inFreeAir();
  }

  /** Readings put straight into the store, as if they had been taken. */
  void readings(Job job, int count) {
    Bridge bridge = store.gauges().bridges().get(0);
    long setUp = store.readings().keep(Some.setUp(bridge));
    Reading last = null;
    sequence = Math.max(sequence, store.readings().lastSequence("A"));
    for (int i = 0; i < count; i++) {
      sequence++;
      var kept = store.readings().append(Some.reading("A", sequence, job.id(), setUp));
      last = i == count - 1 ? kept.join() : last;
    }
  }

  @Override
  public void close() {
    stations.close();
    int port = web.port();
    web.close();
    SamePort.back(port);
    monitor.close();
    charts.close();
    store.close();
    indicator.close();
  }
}
