package org.chordlog.cli.service;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;
import org.chordlog.account.Entrance;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.forward.Forwarder;
import org.chordlog.forward.PlantFile;
import org.chordlog.forward.PlantSettings;
import org.chordlog.monitor.Monitor;
import org.chordlog.notify.AlertWatch;
import org.chordlog.notify.DailyAudit;
import org.chordlog.notify.Watched;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.open.Stores;
import org.chordlog.web.AlertsState;
import org.chordlog.web.Web;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The running service. Parts start in the order store, charts, monitor, then web and stations
 * together; they stop the other way round, so that every reading taken is stored and announced.
 */
public final class Service implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Service.class);

  /** A part that has a name in the log when it stops badly. */
  private record Part(String name, AutoCloseable part) {}

  private final Deque<Part> running = new ArrayDeque<>();
  private int port;
  private @Nullable Stations stations;
  private @Nullable Entrance entrance;
  private @Nullable Consumer<AlertSource> telling;
  private @Nullable Consumer<PlantSettings> delivering;
  private volatile @Nullable Telling told;

  private Service() {}

  /**
   * Starts all; {@code keeper} keeps a station that is added at a page. Whatever had started is
   * stopped again when a later part can't.
   */
  public static Service start(
      Path data,
      StoreSettings kept,
      List<StationSettings> stations,
      WebSettings web,
      StationKeeper keeper) {
    Consumer<Stations> devices = made -> stations.forEach(made::add);
    Alerting alerting = Alerting.of(data, AlertWatch.Times.USUAL);
    return on(Stores.open(data, kept), devices, web, keeper, StationClock.system(), alerting);
  }

  /** With another clock for the stations, and without a watch for alerts. */
  public static Service start(
      Path data,
      StoreSettings kept,
      List<StationSettings> stations,
      WebSettings web,
      StationKeeper keeper,
      StationClock clock) {
    Consumer<Stations> devices = made -> stations.forEach(made::add);
    return on(Stores.open(data, kept), devices, web, keeper, clock, null);
  }

  /**
   * As {@link #start}, on a store that is open and closed with the rest; {@code devices} adds the
   * stations while the web starts; nothing is watched for alerts where {@code alerting} is null.
   */
  static Service on(
      Store store,
      Consumer<Stations> devices,
      WebSettings web,
      StationKeeper keeper,
      StationClock clock,
      @Nullable Alerting alerting) {
    Service service = new Service();
    try {
      service.begin(store, devices, web, keeper, clock, alerting);
      return service;
    } catch (RuntimeException | Error e) {
      service.close();
      throw e;
    }
  }

  private void begin(
      Store opened,
      Consumer<Stations> devices,
      WebSettings webSettings,
      StationKeeper keeper,
      StationClock clock,
      @Nullable Alerting alerting) {
    Store store = keep("store", opened);
    ChartRenderer charts = keep("charts", ChartRenderer.idle());
    Stations made = new Stations(store, clock);
    stations = made;
    Monitor monitor = keep("monitor", new Monitor(store));
    made.subscribe(monitor::accept);
    Web web = new Web(webSettings, store, made, monitor, charts, Clock.systemUTC(), keeper);
    entrance = web.entrance();
    telling = source -> tell(source, store, web);
    delivering = plant -> deliver(plant, store, web);
    keep("web", web);
    keep("stations", made);
    if (alerting != null) {
      watch(alerting, new Parts(store, made, monitor, web), clock);
    }
    CompletableFuture<Void> serving = CompletableFuture.runAsync(web::start);
    try {
      devices.accept(made);
    } finally {
      await(serving);
    }
    port = web.port();
    charts.warmUp();
    monitor.warm();
  }

  /** What the watch looks at. */
  private record Parts(Store store, Stations stations, Monitor monitor, Web web) {}

  private void watch(Alerting alerting, Parts parts, StationClock clock) {
    DailyAudit audit = keep("daily audit", new DailyAudit(alerting::audit));
    Watched.Outside outside =
        new Watched.Outside(
            parts.web()::certificateDaysLeft,
            () -> alerting.files().lastBackupMicros().orElse(null),
            audit::faults);
    Watched watched =
        new Watched(parts.store(), parts.stations()::statuses, parts.monitor(), outside);
    AlertWatch watch = keep("alerts", new AlertWatch(watched, clock::wallMicros, alerting.times()));
    parts.web().watchedBy(watch::counts);
    parts.web().alertsFrom(() -> state(watch.since()));
    audit.start();
    watch.start();
  }

  /** As the page of alerts says it. */
  private AlertsState state(@Nullable Instant watchingSince) {
    Telling now = told;
    return now == null
        ? new AlertsState(watchingSince, false, List.of())
        : new AlertsState(watchingSince, true, now.status().problems());
  }

  /** What the file of the plant in a data directory says; null where there is none. */
  static @Nullable PlantSettings plantOf(Path data) {
    Path file = data.resolve(PlantFile.NAME);
    return Files.exists(file) ? PlantFile.read(file) : null;
  }

  /** From now on what is recorded is delivered to the plant. */
  void deliver(PlantSettings plant) {
    Objects.requireNonNull(delivering).accept(plant);
  }

  private void deliver(PlantSettings plant, Store store, Web web) {
    Forwarder made = keep("plant", Forwarder.of(plant, store));
    web.deliveredBy(made::status);
    made.start();
  }

  /** From now on people and programs are told of alerts. */
  void tell(AlertSource source) {
    Objects.requireNonNull(telling).accept(source);
  }

  private void tell(AlertSource source, Store store, Web web) {
    Telling made =
        keep("messages", new Telling(source, store, Clock.systemUTC(), Telling.Pace.USUAL));
    told = made;
    web.toldBy(made::status);
  }

  /** Its own refusal, as a busy port, goes on to the caller. */
  private static void await(CompletableFuture<Void> serving) {
    try {
      serving.join();
    } catch (CompletionException e) {
      throw e.getCause() instanceof RuntimeException cause ? cause : e;
    }
  }

  private <T extends AutoCloseable> T keep(String name, T part) {
    running.push(new Part(name, part));
    return part;
  }

  public Stations stations() {
    return Objects.requireNonNull(stations);
  }

  /** Where people sign in. */
  Entrance entrance() {
    return Objects.requireNonNull(entrance);
  }

  public int port() {
    return port;
  }

  @Override
  public synchronized void close() {
    while (!running.isEmpty()) {
      Part last = running.pop();
      try {
        last.part().close();
      } catch (Exception e) {
        LOG.atError().addKeyValue("part", last.name()).setCause(e).log("did not stop well");
      }
    }
  }
}
