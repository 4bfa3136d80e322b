package org.chordlog.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.CountDownLatch;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.measure.Job;
import org.chordlog.monitor.Monitor;
import org.chordlog.shop.Shop;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sqlite.SqliteStore;
import org.chordlog.web.Web;
import org.chordlog.web.http.WebSettings;

/**
 * Serves the invented shop: data directory (filled if it is empty), port, and readings of one long
 * job beside the others (0: none); until it is stopped.
 */
public final class PagesLoad {
  private PagesLoad() {}

  public static void main(String[] arguments) throws Exception {
    Path data = Path.of(arguments[0]);
    int port = Integer.parseInt(arguments[1]);
    int readings = Integer.parseInt(arguments[2]);
    boolean filled = Files.exists(data.resolve(SqliteStore.FILE_NAME));
    try (Store store = Stores.open(data);
        ChartRenderer charts = ChartRenderer.start();
        Monitor monitor = new Monitor(store);
        Stations stations = new Stations(store, StationClock.system());
        Web web =
            new Web(
                WebSettings.onLoopback(port),
                store,
                stations,
                monitor,
                charts,
                Clock.systemUTC(),
                StationKeeper.forThisRun())) {
      if (!filled) {
        fill(store, monitor, readings);
      }
      stations.subscribe(monitor::accept);
      web.start();
      monitor.warm();
      StationFile.parse(STATION, "shop").forEach(stations::add);
      System.out.println("http://127.0.0.1:" + web.port() + "/");
      new CountDownLatch(1).await();
    }
  }

  private static final String STATION =
      """
      stations:
        - name: bench-1
          machine: roller 1
          link: {kind: tcp, host: 127.0.0.1, port: 9}
          profile: signed-mm-lines
          indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.5}
      """;

  private static void fill(Store store, Monitor monitor, int readings) {
    long now = ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now());
    Shop shop = Shop.open(store, now, "bench-1");
    if (readings > 0) {
      long start = System.nanoTime();
      Job job = shop.large(readings);
      while (monitor.standing(job.id()).behind() > 0) {
        Thread.onSpinWait();
      }
      System.out.printf("%,d readings in %.1f s%n", readings, (System.nanoTime() - start) / 1e9);
    }
    shop.usual();
  }
}
