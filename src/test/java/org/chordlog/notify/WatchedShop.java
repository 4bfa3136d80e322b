package org.chordlog.notify;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.monitor.Monitor;
import org.chordlog.station.StationStatus;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;

/** A store on disk with a machine "M", stations as the test says, and a clock that it turns. */
final class WatchedShop implements AutoCloseable {
  static final long SECOND = 1_000_000L;
  static final long MINUTE = 60 * SECOND;
  private static final double TARGET_MM = 1800;

  /** In parts of the target: one sixth of the tolerance of ± 12 mm at Cp 1.33. */
  static final double SIGMA = 12 / TARGET_MM / 4;

  private final Path directory;
  final AlertWatch.Times times;
  final Map<String, StationStatus> statuses = new LinkedHashMap<>();
  Watched.Outside outside = Watched.Outside.UNKNOWN;
  Store store;
  Monitor monitor;
  AlertWatch watch;
  final Job job;
  final Bridge bridge;
  private final long setUp;
  private final Random random = new Random(7);
  long now = Some.T0;
  private int piece;

  WatchedShop(Path directory, Duration quiet) {
    this.directory = directory;
    this.times = new AlertWatch.Times(Duration.ofSeconds(5), quiet);
    store = Stores.open(directory);
    bridge = store.gauges().add(Some.bridge("200"), "me");
    store.gauges().mount("A", bridge.id(), now, "me");
    job = store.jobs().add(Some.job("J", "M"), "me");
    setUp = store.readings().keep(Some.setUp(bridge));
    monitor = new Monitor(store);
    watch = watch();
  }

  private AlertWatch watch() {
    Watched.Outside asked =
        new Watched.Outside(
            () -> outside.certificateDaysLeft().get(),
            () -> outside.backupMicros().get(),
            () -> outside.alteredRecords().get());
    Watched watched = new Watched(store, () -> List.copyOf(statuses.values()), monitor, asked);
    return new AlertWatch(watched, () -> now, times);
  }

  /** As after a kill: nothing of the former process is left but the store. */
  void restart() {
    watch.close();
    monitor.close();
    store.close();
    store = Stores.open(directory);
    monitor = new Monitor(store);
    watch = watch();
  }

  /** Pieces of one reading each, a minute apart, off the target by that many sigma on average. */
  void bend(int pieces, double from, double perPiece) {
    List<CompletableFuture<Reading>> kept = new ArrayList<>();
    for (int i = 0; i < pieces; i++) {
      double off = SIGMA * (from + perPiece * i + random.nextGaussian());
      kept.add(store.readings().append(reading(TARGET_MM / (1 + off))));
      now += MINUTE;
    }
    kept.forEach(CompletableFuture::join);
  }

  private Reading reading(double radiusMm) {
    piece++;
    Reading like = Some.reading("A", piece, job.id(), setUp);
    RadiusEstimate radius =
        new RadiusEstimate(
            radiusMm, radiusMm - 1, radiusMm + 1, 1 / radiusMm, 1e-7, 2, Double.POSITIVE_INFINITY);
    Reading of =
        new Reading(
            0,
            like.source(),
            new Reading.Place(job.id(), piece, "start"),
            like.measured(),
            new Reading.Result(radius, like.result().decision(), like.result().marks()),
            like.circumstances());
    return Some.at(of, now);
  }

  void happened(JobEvent.Kind kind) {
    long last = store.readings().lastId();
    JobEvent.Content content = new JobEvent.Content(null, null, "", "");
    Recorded by = new Recorded(now, "me");
    JobEvent unused = store.jobs().add(new JobEvent(0, job.id(), "M", kind, last, content, by));
  }

  /** Turns the clock on and looks at everything. */
  void round(long later) {
    now += later;
    watch.round();
  }

  void link(String station, LinkState link) {
    statuses.put(
        station,
        new StationStatus(
            station,
            "M",
            link,
            "No such port.",
            "/dev/x",
            now,
            null,
            new StationStatus.Counts(0, 0, 0, 0, 0, 0, 0, Map.of()),
            job.id(),
            new StationStatus.PlaceNow(1, "start", 1, false, null, null),
            bridge.id(),
            null,
            false,
            false,
            null,
            null,
            null));
  }

  /** Every event so far, as "RAISED ROLLER_CREEPS M". */
  List<String> events() {
    return store.alerts().eventsAfter(0, 1_000).stream().map(WatchedShop::said).toList();
  }

  private static String said(AlertEvent event) {
    Alert alert = event.alert();
    return (event.what() + " " + alert.kind() + " " + alert.subject().name()).trim();
  }

  @Override
  public void close() {
    watch.close();
    monitor.close();
    store.close();
  }
}
