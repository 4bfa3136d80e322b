package org.chordlog.store.sqlite;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Semaphore;
import org.chordlog.harness.Directories;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;

/**
 * What the chain of hashes costs: readings are written with it and without it in turns, in one
 * process, and the ratios of neighbours are averaged, so that what else runs on the machine
 * disturbs both alike. Told are processor time of the writer's thread and of the whole process (the
 * hashes of rows are made by the threads that bring readings), and readings a second.
 *
 * <pre>java … SealCost 20 20000 10000     pairs, readings a run, readings under way at most</pre>
 */
final class SealCost {
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final byte[] NO_HASH = new byte[0];
  private static final int TICKS_A_CHECKPOINT = 4;

  /** Of one run, for each reading. */
  private record Cost(double writerMicros, double processMicros, double wallMicros) {}

  /** Adds nothing to the chain. */
  private static final class NoSeal extends Sealer {
    NoSeal(Connection connection) throws SQLException {
      super(connection);
    }

    @Override
    byte[] hash(Reading reading, long run) {
      return NO_HASH;
    }

    @Override
    void reading(long id, byte[] rowHash) {}

    @Override
    void flush() {}
  }

  private final Path file;
  private final Reading like;
  private final int readings;
  private final int underWay;
  private long sequence;

  private SealCost(Path folder, int readings, int underWay) {
    this.readings = readings;
    this.underWay = underWay;
    file = folder.resolve(SqliteStore.FILE_NAME);
    try (SqliteStore store = SqliteStore.open(folder)) {
      like = Kept.first(store);
    }
  }

  public static void main(String[] arguments) throws Exception {
    int pairs = Integer.parseInt(arguments[0]);
    Path folder = Files.createTempDirectory("seal-cost");
    SealCost cost =
        new SealCost(folder, Integer.parseInt(arguments[1]), Integer.parseInt(arguments[2]));
    for (int i = 0; i < 3; i++) {
      cost.pair(i); // until everything is compiled
    }
    List<Cost[]> all = new ArrayList<>();
    for (int i = 0; i < pairs; i++) {
      all.add(cost.pair(i));
    }
    Directories.delete(folder);
    tell(cost, all);
  }

  private static void tell(SealCost cost, List<Cost[]> all) {
    double[] writer =
        all.stream().mapToDouble(p -> p[0].writerMicros / p[1].writerMicros).toArray();
    double[] process =
        all.stream().mapToDouble(p -> p[0].processMicros / p[1].processMicros).toArray();
    double[] speed = all.stream().mapToDouble(p -> p[1].wallMicros / p[0].wallMicros).toArray();
    System.out.printf(
        "with the chain : without, %d pairs of %,d readings, at most %,d under way:%n"
            + "writer's processor time %s, of the process %s, readings a second %s%n"
            + "means without: %.2f µs of the writer, %.2f of the process, %.2f from end to end%n",
        all.size(),
        cost.readings,
        cost.underWay,
        told(writer),
        told(process),
        told(speed),
        all.stream().mapToDouble(p -> p[1].writerMicros).average().orElseThrow(),
        all.stream().mapToDouble(p -> p[1].processMicros).average().orElseThrow(),
        all.stream().mapToDouble(p -> p[1].wallMicros).average().orElseThrow());
  }

  /** Geometric mean of the ratios, and its standard error. */
  private static String told(double[] ratios) {
    double[] logs = Arrays.stream(ratios).map(Math::log).toArray();
    double mean = Arrays.stream(logs).average().orElseThrow();
    double squares = Arrays.stream(logs).map(each -> (each - mean) * (each - mean)).sum();
    double error = Math.sqrt(squares / (logs.length - 1) / logs.length);
    return "%.3f ± %.3f".formatted(Math.exp(mean), Math.exp(mean) * error);
  }

  /** With, then without; the other way round in every second pair. */
  private Cost[] pair(int number) throws Exception {
    boolean withFirst = number % 2 == 0;
    Cost first = run(withFirst);
    Cost second = run(!withFirst);
    return withFirst ? new Cost[] {first, second} : new Cost[] {second, first};
  }

  /** On a connection of its own, to the file that grows from run to run. */
  private Cost run(boolean sealed) throws Exception {
    StoreSettings settings = StoreSettings.USUAL;
    try (Connection connection = Connections.writer(file)) {
      long run = Sql.insert(connection, "INSERT INTO run (started_micros, version) VALUES (1, '')");
      Sealer sealer = sealed ? new Sealer(connection) : new NoSeal(connection);
      Announced announced = Announced.open(file, connection);
      try (Writing writing = Writing.start(connection, run, announced, settings, sealer);
          WalCheckpointer checkpointer =
              new WalCheckpointer(file, writing.meter()::lastCommitMicros)) {
        checkpointer.start(TICKS_A_CHECKPOINT * settings.tickMillis());
        long writerBefore = writerNanos();
        long processBefore = processNanos();
        long start = System.nanoTime();
        write(writing);
        return new Cost(
            micros(writerNanos() - writerBefore),
            micros(processNanos() - processBefore),
            micros(System.nanoTime() - start));
      }
    }
  }

  private double micros(long nanos) {
    return nanos / 1e3 / readings;
  }

  private void write(Writing writing) throws InterruptedException {
    Semaphore room = new Semaphore(underWay);
    for (int i = 0; i < readings; i++) {
      room.acquire();
      sequence++;
      var unused =
          writing
              .append(Some.reading("A", sequence, like.jobId(), like.setUpId()), List.of())
              .whenComplete((kept, failure) -> release(room, failure));
    }
    room.acquire(underWay);
  }

  private static void release(Semaphore room, @Nullable Throwable failure) {
    if (failure != null) {
      throw new IllegalStateException(failure);
    }
    room.release();
  }

  private static long writerNanos() {
    return Arrays.stream(THREADS.getThreadInfo(THREADS.getAllThreadIds()))
        .filter(each -> each != null && each.getThreadName().equals("store-write"))
        .mapToLong(each -> THREADS.getThreadCpuTime(each.getThreadId()))
        .max()
        .orElseThrow();
  }

  private static long processNanos() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }
}
