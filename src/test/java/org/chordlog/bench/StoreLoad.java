package org.chordlog.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Comparator;
import java.util.concurrent.Semaphore;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sqlite.SqliteStore;
import org.jspecify.annotations.Nullable;

/**
 * Readings a second into the store, each acknowledged after its commit, against a bare
 * prepared-statement batch insert of the same rows into the same table with the same pragmas, 1,000
 * a commit; in turns, medians. Arguments: rounds (7), readings a round (200,000). The processor
 * time of the whole process and of the writer's thread are told too, which other programs on the
 * machine disturb less.
 */
public final class StoreLoad {
  private static final int READINGS = 200_000;
  private static final double NANOS_A_MICRO = 1e3;
  private static final int ROUNDS = 7;
  private static final int COLUMNS = 33;
  private static final int COMMIT = 1_000;
  private static final int UNDER_WAY = 10_000;

  private static int readings = READINGS;

  /** Of the writer's thread in the last round. */
  private static double writerMicros;

  private StoreLoad() {}

  public static void main(String[] arguments) throws Exception {
    int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : ROUNDS;
    readings = arguments.length > 1 ? Integer.parseInt(arguments[1]) : READINGS;
    double[] bare = new double[rounds];
    double[] store = new double[rounds];
    double[] micros = new double[rounds];
    double[] writer = new double[rounds];
    bare();
    store();
    for (int i = 0; i < rounds; i++) {
      bare[i] = bare();
      long before = processorNanos();
      store[i] = store();
      micros[i] = (processorNanos() - before) / NANOS_A_MICRO / readings;
      writer[i] = writerMicros;
    }
    System.out.printf(
        "bare %,.0f/s, store %,.0f/s, %.2f µs of processor a reading, %.2f of them the writer's"
            + " (medians of %d rounds of %,d), ratio of medians %.2f%n",
        median(bare),
        median(store),
        median(micros),
        median(writer),
        rounds,
        readings,
        median(store) / median(bare));
    double ratio = median(store) / median(bare);
    new BudgetRow(
            "readings into the store, durable",
            "%,.0f rows/s".formatted(median(store)),
            "%,.0f rows/s (bare batch insert, 1,000 a commit)".formatted(median(bare)),
            ratio,
            "at least 0.70",
            ratio >= 0.7)
        .print();
  }

  private static long processorNanos() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }

  private static long writerNanos() {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    return Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
        .filter(each -> each != null && each.getThreadName().equals("store-write"))
        .mapToLong(each -> threads.getThreadCpuTime(each.getThreadId()))
        .max()
        .orElseThrow();
  }

  private static double store() throws Exception {
    Path directory = Files.createTempDirectory("store-load");
    try (Store store = Stores.open(directory)) {
      Reading first = Kept.first(store);
      Semaphore room = new Semaphore(UNDER_WAY);
      long before = writerNanos();
      long start = System.nanoTime();
      for (int i = 1; i <= readings; i++) {
        room.acquire();
        var unused =
            store
                .readings()
                .append(Some.reading("A", i, first.jobId(), first.setUpId()))
                .whenComplete((kept, failure) -> release(room, failure));
      }
      room.acquire(UNDER_WAY);
      writerMicros = (writerNanos() - before) / NANOS_A_MICRO / readings;
      return readings / ((System.nanoTime() - start) / 1e9);
    } finally {
      delete(directory);
    }
  }

  private static void release(Semaphore room, @Nullable Throwable failure) {
    if (failure != null) {
      throw new IllegalStateException(failure);
    }
    room.release();
  }

  private static double bare() throws Exception {
    Path directory = Files.createTempDirectory("bare-load");
    Reading first;
    try (Store store = Stores.open(directory)) {
      first = Kept.first(store);
    }
    String url = "jdbc:sqlite:" + directory.resolve(SqliteStore.FILE_NAME);
    try (Connection connection = DriverManager.getConnection(url);
        Statement pragma = connection.createStatement()) {
      pragma.executeUpdate("PRAGMA journal_mode = WAL");
      pragma.executeUpdate("PRAGMA synchronous = FULL");
      pragma.executeUpdate("PRAGMA foreign_keys = ON");
      connection.setAutoCommit(false);
      long start = System.nanoTime();
      insert(connection, first);
      return readings / ((System.nanoTime() - start) / 1e9);
    } finally {
      delete(directory);
    }
  }

  private static void insert(Connection connection, Reading first) throws SQLException {
    String places = "?, ".repeat(COLUMNS - 1) + "?";
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO reading VALUES (" + places + ")")) {
      for (int i = 1; i <= readings; i++) {
        bind(insert, i, Some.reading("A", i, first.jobId(), first.setUpId()));
        insert.addBatch();
        if (i % COMMIT == 0) {
          insert.executeBatch();
          connection.commit();
        }
      }
    }
  }

  private static void bind(PreparedStatement to, long id, Reading reading) throws SQLException {
    var captured = reading.captured();
    var radius = reading.radius();
    @Nullable Object[] row = {
      id,
      reading.station(),
      reading.stationSequence(),
      reading.jobId(),
      reading.piece(),
      reading.position(),
      captured.mode().name(),
      captured.valueNm(),
      captured.scatterNm(),
      captured.sampleCount(),
      captured.firstSequence(),
      captured.lastSequence(),
      captured.monotonicNanos(),
      captured.wallMicros(),
      reading.depthNm(),
      reading.setUpId(),
      radius.radiusMm(),
      radius.lowerMm(),
      radius.upperMm(),
      radius.curvaturePerMm(),
      radius.standardUncertaintyPerMm(),
      radius.coverageFactor(),
      radius.degreesOfFreedom(),
      reading.decision().name(),
      "",
      reading.clock().name(),
      reading.rawHex(),
      1L,
      reading.circumstances().kind().name(),
      reading.circumstances().pass(),
      reading.circumstances().revision(),
      reading.circumstances().measuredBy(),
      reading.circumstances().materialLot()
    };
    for (int i = 0; i < row.length; i++) {
      to.setObject(i + 1, row[i]);
    }
  }

  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  static void delete(Path directory) throws IOException {
    try (var paths = Files.walk(directory)) {
      for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
