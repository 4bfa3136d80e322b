package org.chordlog.bench;

import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.forward.EdgeRig;
import org.chordlog.forward.ForwardState;
import org.chordlog.forward.TestPlant;
import org.chordlog.harness.Directories;
import org.chordlog.harness.PostgresServer;
import org.chordlog.store.FeedPlace;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;

/**
 * How fast a backlog reaches a plant on this computer (fsync on), against a bare COPY of the same
 * rows into the same table, 5,000 a commit, by one connection; how long an append takes at the edge
 * meanwhile, and how soon a reading is at the plant when nothing waits; then the catch-up once more
 * with {@code kilobytesASecond} at {@value #LIMITED_ROWS} rows/s. Arguments: readings of the
 * backlog (200,000), seconds of the live part (30), and where the server runs: {@code shared} (all
 * processors, usual), {@code pinned} (the last one; this program on the others), {@code idle} (only
 * when nothing else wants to: {@code chrt -i}).
 */
public final class ForwardLoad {
  private static final int BATCH = 5_000;
  private static final int LIMITED_ROWS = 20_000;
  private static final int SAMPLES = 400;
  private static final int APPEND_MILLIS = 10;

  private final PostgresServer server;
  private final String database;
  private final EdgeRig edge;
  private final int readings;

  private ForwardLoad(PostgresServer server, Path data, int readings) {
    this.server = server;
    this.database = TestPlant.create(server);
    this.readings = readings;
    this.edge = new EdgeRig(data, TestPlant.EDGE, server.port(), server, database);
  }

  public static void main(String[] arguments) throws Exception {
    int readings = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200_000;
    int seconds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 30;
    PostgresServer server = PostgresServer.fresh();
    place(server, arguments.length > 2 ? arguments[2] : "shared");
    Path folder = Files.createTempDirectory("forward-load");
    long bytes = new ForwardLoad(server, folder.resolve("free"), readings).run(seconds);
    int kilobytes = (int) (LIMITED_ROWS * bytes / readings / 1_000);
    new ForwardLoad(server, folder.resolve("limited"), readings).limited(kilobytes);
    server.close();
    Directories.delete(folder);
    System.exit(0);
  }

  private static void place(PostgresServer server, String where) throws Exception {
    int last = Runtime.getRuntime().availableProcessors() - 1;
    switch (where) {
      case "pinned" -> {
        server.each("taskset", "-acp", String.valueOf(last));
        String own = String.valueOf(ProcessHandle.current().pid());
        new ProcessBuilder("taskset", "-acp", "0-" + Math.max(0, last - 1), own).start().waitFor();
      }
      case "idle" -> server.each("chrt", "-aip", "0");
      default -> System.out.println("server and program share the processors");
    }
    System.out.println("the server runs " + where);
  }

  /** Bytes of the rows as they are copied. */
  private long run(int seconds) throws Exception {
    tellLoad();
    double rate = catchUp();
    Bare bare = bare();
    System.out.printf(
        "catch-up %,.0f rows/s, bare COPY %,.0f rows/s, ratio %.2f%n",
        rate, bare.rate(), rate / bare.rate());
    edge.complete();
    tell("edge to plant, live", live(seconds));
    edge.complete();
    edge.assertEqual();
    tellLoad();
    edge.close();
    return bare.bytes();
  }

  private void limited(int kilobytes) throws Exception {
    edge.limited(kilobytes);
    System.out.printf("with kilobytesASecond: %d%n", kilobytes);
    System.out.printf("catch-up %,.0f rows/s%n", catchUp());
    edge.complete();
    edge.close();
  }

  /** Rows a second. */
  private double catchUp() throws Exception {
    for (int i = 0; i < readings; i += BATCH) {
      edge.measure(Math.min(BATCH, readings - i));
    }
    double[] alone = appends(() -> false, SAMPLES);
    long collected = collectorMillis();
    long began = System.nanoTime();
    edge.start();
    double[] beside = appends(this::caughtUp, 100_000);
    double took = seconds(began);
    tell("append without delivery", alone);
    tell("append during catch-up", beside);
    System.out.printf(
        "collection of garbage meanwhile %d ms of %.1f s%n", collectorMillis() - collected, took);
    return (readings + alone.length) / took;
  }

  private static long collectorMillis() {
    return ManagementFactory.getGarbageCollectorMXBeans().stream()
        .mapToLong(GarbageCollectorMXBean::getCollectionTime)
        .sum();
  }

  private static double seconds(long began) {
    return (System.nanoTime() - began) / 1e9;
  }

  private boolean caughtUp() {
    return edge.forwarder().status().rest().rows() < 20
        && edge.forwarder().status().state() != ForwardState.CONNECTING;
  }

  private interface Until {
    boolean reached() throws Exception;
  }

  /** Milliseconds of single appends, some 80 a second, until that is so, at most so many. */
  private double[] appends(Until until, int most) throws Exception {
    List<Double> millis = new ArrayList<>();
    while (millis.size() < most && !until.reached()) {
      long began = System.nanoTime();
      edge.measure(1);
      millis.add(1_000 * seconds(began));
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(APPEND_MILLIS));
    }
    return millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
  }

  /** Rows a second, and bytes of all of them. */
  private record Bare(double rate, long bytes) {}

  /** The same rows once more, as those of another edge, without staging and ledger. */
  private Bare bare() throws Exception {
    try (Connection connection = server.connect(database)) {
      List<byte[]> batches = exported(connection);
      CopyManager copies = connection.unwrap(PGConnection.class).getCopyAPI();
      connection.setAutoCommit(false);
      long rows = 0;
      long began = System.nanoTime();
      for (byte[] each : batches) {
        var in = copies.copyIn("COPY plant.reading FROM STDIN");
        in.writeToCopy(each, 0, each.length);
        rows += in.endCopy();
        connection.commit();
      }
      double rate = rows / seconds(began);
      server.execute(
          database,
          "DELETE FROM plant.reading WHERE edge_id = '00000000-0000-4000-a000-000000000001'");
      return new Bare(rate, batches.stream().mapToLong(each -> each.length).sum());
    }
  }

  private List<byte[]> exported(Connection connection) throws Exception {
    CopyManager copies = connection.unwrap(PGConnection.class).getCopyAPI();
    List<byte[]> batches = new ArrayList<>();
    for (long from = 0; from < readings; from += BATCH) {
      java.io.StringWriter text = new java.io.StringWriter();
      long unused =
          copies.copyOut(
              "COPY (SELECT * FROM plant.reading WHERE id > %d AND id <= %d) TO STDOUT"
                  .formatted(from, from + BATCH),
              text);
      String other =
          text.toString().replace(edge.store().identity(), "00000000-0000-4000-a000-000000000001");
      batches.add(other.getBytes(StandardCharsets.UTF_8));
    }
    return batches;
  }

  /** Milliseconds from the commit at the edge until the plant shows it. */
  private double[] live(int seconds) throws Exception {
    List<Double> millis = new ArrayList<>();
    try (Connection connection = server.connect(database);
        PreparedStatement newest =
            connection.prepareStatement("SELECT coalesce(max(id), 0) FROM plant.reading")) {
      long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
      while (System.nanoTime() < end) {
        edge.measure(1);
        long began = System.nanoTime();
        FeedPlace at = edge.store().feed().orElseThrow().newest();
        while (newest(newest) < at.readingId()) {
          LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
        }
        millis.add(1_000 * seconds(began));
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(37));
      }
    }
    return millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
  }

  private static long newest(PreparedStatement ask) throws Exception {
    try (ResultSet row = ask.executeQuery()) {
      row.next();
      return row.getLong(1);
    }
  }

  private static void tell(String what, double[] sorted) {
    System.out.printf(
        "%s: median %.1f ms, p95 %.1f ms, p99 %.1f ms, most %.1f ms (%d)%n",
        what, at(sorted, 0.5), at(sorted, 0.95), at(sorted, 0.99), at(sorted, 1), sorted.length);
  }

  private static double at(double[] sorted, double share) {
    int index = (int) Math.ceil(share * sorted.length) - 1;
    return sorted.length == 0
        ? Double.NaN
        : sorted[Math.max(0, Math.min(sorted.length - 1, index))];
  }

  private static void tellLoad() {
    System.out.printf(
        "load of the machine %.1f on %d processors %s%n",
        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
        Runtime.getRuntime().availableProcessors(),
        Arrays.toString(new String[] {System.getProperty("java.version")}));
  }
}
