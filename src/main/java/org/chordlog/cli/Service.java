package org.chordlog.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;
import org.chordlog.chart.Draughtsman;
import org.chordlog.monitor.Monitor;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.store.sqlite.SqliteStore;
import org.chordlog.store.sqlite.StoreSettings;
import org.chordlog.web.Web;
import org.chordlog.web.WebSettings;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The running service. Parts start in the order store, charts, monitor, web, stations; they stop
 * the other way round, so that whatever was taken is kept and announced.
 */
final class Service implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Service.class);

  /** A part that has a name in the log when it stops badly. */
  private record Part(String name, AutoCloseable part) {}

  private final Deque<Part> running = new ArrayDeque<>();
  private int port;
  private @Nullable Stations stations;

  private Service() {}

  /**
   * Starts all; {@code keeper} keeps a station that is added at a page. Whatever had started is
   * stopped again when a later part can't.
   */
  static Service start(
      Path data,
      StoreSettings kept,
      List<StationSettings> stations,
      WebSettings web,
      Consumer<StationSettings> keeper) {
    return start(data, kept, stations, web, keeper, StationClock.system());
  }

  /** With another clock for the stations. */
  static Service start(
      Path data,
      StoreSettings kept,
      List<StationSettings> stations,
      WebSettings web,
      Consumer<StationSettings> keeper,
      StationClock clock) {
    return on(SqliteStore.open(data, kept), stations, web, keeper, clock);
  }

  /** As {@link #start}, on a store that is open; it is closed with the rest. */
  static Service on(
      Store store,
      List<StationSettings> stations,
      WebSettings web,
      Consumer<StationSettings> keeper,
      StationClock clock) {
    Service service = new Service();
    try {
      service.begin(store, stations, web, keeper, clock);
      return service;
    } catch (RuntimeException | Error e) {
      service.close();
      throw e;
    }
  }

  private void begin(
      Store opened,
      List<StationSettings> settings,
      WebSettings webSettings,
      Consumer<StationSettings> keeper,
      StationClock clock) {
    Store store = keep("store", opened);
    Draughtsman charts = keep("charts", Draughtsman.start());
    Stations made = new Stations(store, clock);
    stations = made;
    Monitor monitor = keep("monitor", new Monitor(store));
    made.subscribe(monitor::accept);
    Web web = new Web(webSettings, store, made, monitor, charts, Clock.systemUTC(), keeper);
    keep("web", web);
    keep("stations", made);
    web.start();
    port = web.port();
    settings.forEach(made::add);
  }

  private <T extends AutoCloseable> T keep(String name, T part) {
    running.push(new Part(name, part));
    return part;
  }

  Stations stations() {
    return Objects.requireNonNull(stations);
  }

  int port() {
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
