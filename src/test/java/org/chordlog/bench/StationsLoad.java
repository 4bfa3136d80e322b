package org.chordlog.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.harness.Directories;
import org.chordlog.harness.EventNotes;
import org.chordlog.harness.Indicators;
import org.chordlog.harness.ProcessFigures;
import org.chordlog.harness.Proof;
import org.chordlog.harness.Rig;
import org.chordlog.harness.ServiceProcess;

/**
 * The service as a process with 64 stations at 100 samples/s each and ten pages open: processor
 * time, heap after collection, what was dropped, time from the last byte of a frame to the event.
 * Arguments: seconds (60), stations (64), readings a minute of each (30). With many minutes it is
 * the soak: a line each minute and a verdict. A job with subgroups of five fills up to some 3,000
 * readings, so half a soak is to bring these.
 */
public final class StationsLoad {
  private static final int PER_SECOND = 100;
  private static final int PAGES = 10;
  private static final double SETTLE_SECONDS = 1;
  private static final int WARM_SECONDS = 20;
  private static final String[] OPTIONS = {"-Xmx128m", "-XX:+UseSerialGC"};

  private final int stations;
  private final int cycleFrames;
  private final Rig rig;
  private final Proof proof = new Proof();
  private final List<Dashboard> pages = new ArrayList<>();

  private StationsLoad(Path directory, int stations, int readingsPerMinute) {
    this.stations = stations;
    cycleFrames = 60 * PER_SECOND / readingsPerMinute;
    double contactSeconds = (cycleFrames - airFrames()) / (double) PER_SECOND;
    rig = new Rig(directory, stations, Math.min(0.4, contactSeconds / 2));
  }

  private int airFrames() {
    return cycleFrames / 2;
  }

  public static void main(String[] arguments) throws Exception {
    int seconds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 60;
    int stations = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 64;
    int readingsPerMinute = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 30;
    Path directory = Files.createTempDirectory("stations-load");
    try {
      new StationsLoad(directory, stations, readingsPerMinute).run(seconds);
    } finally {
      Directories.delete(directory);
    }
  }

  private void run(int seconds) throws Exception {
    List<Long> jobs = rig.prepare();
    RelayRun bare = RelayRun.of(rig, stations, PER_SECOND);
    System.out.println("bare relay of the same lines: " + bare);
    try (Indicators indicators =
            new Indicators(rig, stations, PER_SECOND, airFrames(), cycleFrames);
        ServiceProcess service = ServiceProcess.serve(rig, OPTIONS)) {
      Latencies latencies = new Latencies(indicators);
      try (EventNotes notes = listen(service, latencies)) {
        openPages(service, jobs);
        awaitOpen(service);
        indicators.start();
        pause(Math.min(WARM_SECONDS, seconds / 2.0));
        latencies.restart();
        measure(service, indicators, latencies, seconds, bare);
        indicators.restInAir(true);
        pause(3);
        service.stop();
        notes.awaitEnd();
      } finally {
        pages.forEach(Dashboard::close);
      }
    }
    List<String> faults = proof.faults(rig.data());
    System.out.printf(
        "%d readings announced, %d kept, faults: %s%n",
        proof.announcedReadings(), proof.keptReadings(), faults);
  }

  private EventNotes listen(ServiceProcess service, Latencies latencies) throws IOException {
    return EventNotes.listen(
        service.address(),
        "",
        event -> {
          latencies.hear(event);
          proof.note(event);
        });
  }

  private void openPages(ServiceProcess service, List<Long> jobs) throws IOException {
    for (int i = 0; i < Math.min(PAGES, stations); i++) {
      pages.add(new Dashboard(service, "S" + i, jobs.get(i)));
    }
  }

  /** So that no frame is sent before its station listens, and the counts agree. */
  private static void awaitOpen(ServiceProcess service) throws Exception {
    while (service.body("/health").contains("\"link\":\"WAITING\"")) {
      pause(0.05);
    }
  }

  private void measure(
      ServiceProcess service,
      Indicators indicators,
      Latencies latencies,
      int seconds,
      RelayRun bare)
      throws Exception {
    double cpuBefore = ProcessFigures.cpuSeconds(service.pid());
    long start = System.nanoTime();
    long end = start + seconds * 1_000_000_000L;
    double cores = 0;
    double heapMiB = 0;
    Soak soak = new Soak();
    while (System.nanoTime() < end) {
      pause(Math.min(60, (end - System.nanoTime()) / 1e9));
      double wall = (System.nanoTime() - start) / 1e9;
      cores = (ProcessFigures.cpuSeconds(service.pid()) - cpuBefore) / wall;
      tell(latencies);
      latencies.hold(true); // the look collects the service's whole heap
      ProcessFigures now = ProcessFigures.of(service.pid());
      heapMiB = Math.max(heapMiB, now.heapMiB());
      soak.add(now);
      tell(wall, cores, now, indicators);
      pause(SETTLE_SECONDS);
      latencies.hold(false);
    }
    soak.print();
    List<String> losses = losses(service);
    System.out.println("pages looked " + looks() + " times at statistics and chart; " + losses);
    useRow(cores, heapMiB, losses.size() + indicators.lost(), bare).print();
    latencyRow("live value", latencies.live(), latencies.liveWithin(), bare).print();
    latencyRow(
            "reading, its commit included", latencies.readings(), latencies.readingsWithin(), bare)
        .print();
  }

  private BudgetRow useRow(double cores, double heapMiB, long losses, RelayRun bare) {
    return new BudgetRow(
        stations + " stations × " + PER_SECOND + " samples/s, " + PAGES + " pages open",
        "%.2f cores, heap at most %.0f MiB after collection (-Xmx128m), %s"
            .formatted(cores, heapMiB, losses == 0 ? "nothing dropped" : "DROPPED"),
        "%.2f cores (bare jSerialComm, each line passed on)".formatted(bare.cores()),
        cores / bare.cores(),
        "under 1 core, nothing dropped, heap under 128 MiB",
        cores < 1 && losses == 0 && heapMiB < 128);
  }

  private static BudgetRow latencyRow(
      String what, Latencies.Percentiles found, Latencies.Percentiles within, RelayRun bare) {
    return new BudgetRow(
        "last byte of a frame → event at the client, at that load: " + what,
        "p50 %.1f, p99 %.1f ms (%,d); of it within the service p99 %.1f ms"
            .formatted(found.p50(), found.p99(), found.count(), within.p99()),
        "p50 %.1f, p99 %.1f ms (bare, each line passed on)"
            .formatted(bare.latency().p50(), bare.latency().p99()),
        found.p99() / bare.latency().p99(),
        "p99 under 20 ms",
        found.p99() < 20);
  }

  /** Counters of what was lost or damaged that are not 0. */
  private static List<String> losses(ServiceProcess service) throws Exception {
    return service.body("/metrics").lines().filter(StationsLoad::tellsOfLoss).toList();
  }

  private static boolean tellsOfLoss(String line) {
    return line.matches("chordlog_(dropped|damaged)\\S+ [1-9].*");
  }

  private long looks() {
    return pages.stream().mapToLong(Dashboard::looks).sum();
  }

  private void tell(double wall, double cores, ProcessFigures now, Indicators indicators)
      throws IOException {
    System.out.printf(
        Locale.ROOT,
        "%6.0f s: %.2f cores, heap %.1f MiB, resident %.0f MiB, %d threads, %d descriptors,"
            + " data %.1f MiB, %d frames lost by the devices%n",
        wall,
        cores,
        now.heapMiB(),
        now.residentMiB(),
        now.threads(),
        now.descriptors(),
        size() / 1048576.0,
        indicators.lost());
  }

  private static void tell(Latencies latencies) {
    System.out.printf("   live %s%n", latencies.live());
    System.out.printf("      within the service %s%n", latencies.liveWithin());
    System.out.printf("   readings %s%n", latencies.readings());
    System.out.printf("      within the service %s%n", latencies.readingsWithin());
    System.out.printf("   frames sent late %s%n", latencies.senderLate());
  }

  private double size() throws IOException {
    try (var files = Files.list(rig.data())) {
      return files.mapToLong(file -> file.toFile().length()).sum();
    }
  }

  private static void pause(double seconds) {
    LockSupport.parkNanos(Math.round(seconds * 1e9));
  }
}
