package org.chordlog.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Semaphore;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.stats.ChartKind;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.Summary;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.sqlite.Kept;
import org.chordlog.store.sqlite.Some;
import org.chordlog.store.sqlite.SqliteStore;

/**
 * What a look costs at jobs of 1e3, 1e5 and 1e7 readings (or the counts given): the statistics'
 * restart, a new reading with its charts, pages and searches. Medians of 21 looks, in ms.
 */
public final class GrowthLoad {
  private static final int LOOKS = 21;
  private static final int UNDER_WAY = 10_000;

  private record Grown(long jobId, long setUpId, long readings) {}

  private GrowthLoad() {}

  public static void main(String[] arguments) throws Exception {
    long[] counts =
        arguments.length == 0
            ? new long[] {1_000, 100_000, 10_000_000}
            : Arrays.stream(arguments).mapToLong(Long::parseLong).toArray();
    Path directory = Files.createTempDirectory("growth-load");
    try {
      Map<Long, Grown> jobs = fill(directory, counts);
      for (Grown job : jobs.values()) {
        look(directory, job);
      }
    } finally {
      StoreLoad.delete(directory);
    }
  }

  private static Map<Long, Grown> fill(Path directory, long[] counts) throws Exception {
    Map<Long, Grown> jobs = new LinkedHashMap<>();
    try (SqliteStore store = SqliteStore.open(directory);
        Monitor monitor = new Monitor(store)) {
      for (long count : counts) {
        Reading first = Kept.first(store);
        Grown job = new Grown(first.jobId(), first.setUpId(), count);
        jobs.put(count, job);
        timed("%,d readings kept".formatted(count), () -> append(store, job, 1, count));
        timed("their statistics", () -> catchUp(monitor, job));
      }
    }
    System.out.printf("file %,d bytes%n", Files.size(directory.resolve(SqliteStore.FILE_NAME)));
    return jobs;
  }

  private static void append(SqliteStore store, Grown job, long from, long to)
      throws InterruptedException {
    Semaphore room = new Semaphore(UNDER_WAY);
    for (long i = from; i <= to; i++) {
      room.acquire();
      Reading reading = Some.reading("S" + job.jobId(), i, job.jobId(), job.setUpId());
      var unused = store.readings().append(reading).whenComplete((kept, failure) -> room.release());
    }
    room.acquire(UNDER_WAY);
  }

  private static void catchUp(Monitor monitor, Grown job) {
    while (monitor.standing(job.jobId()).behind() > 0) {
      Thread.onSpinWait();
    }
  }

  private static void look(Path directory, Grown job) throws Exception {
    System.out.printf("--- a job of %,d readings%n", job.readings());
    long start = System.nanoTime();
    try (SqliteStore store = SqliteStore.open(directory);
        Monitor monitor = new Monitor(store)) {
      monitor.read(job.jobId(), GrowthLoad::charts);
      System.out.printf("  open and first charts   %8.2f ms%n", millis(start));
      long[] next = {job.readings()};
      median(
          "a reading and its charts",
          () -> {
            append(store, job, next[0] + 1, ++next[0]);
            monitor.read(job.jobId(), GrowthLoad::charts);
          });
      median("every chart, summaries", () -> monitor.read(job.jobId(), GrowthLoad::charts));
      pages(store, job);
    }
  }

  private static void pages(SqliteStore store, Grown job) throws Exception {
    long middle = store.readings().lastId() / 2;
    median("newest 100", () -> store.readings().latestOfJob(job.jobId(), Long.MAX_VALUE, 100));
    median("100 from the middle", () -> store.readings().ofJob(job.jobId(), middle, 100));
    median("count", () -> store.readings().countOfJob(job.jobId()));
    median("100 at a position", () -> store.readings().search(position(job)));
    median("100 undecided", () -> store.readings().search(undecided(job)));
    median("100 of a time span", () -> store.readings().search(time(job)));
    median("100 of the machine", () -> store.readings().ofMachine("M", middle, 100));
  }

  private static ReadingQuery position(Grown job) {
    return new ReadingQuery(
        job.jobId(), "end", null, null, null, null, 0, Long.MAX_VALUE, true, null, 100);
  }

  private static ReadingQuery undecided(Grown job) {
    return new ReadingQuery(
        job.jobId(),
        null,
        Decision.UNDECIDED,
        null,
        null,
        null,
        0,
        Long.MAX_VALUE,
        true,
        null,
        100);
  }

  private static ReadingQuery time(Grown job) {
    long middle = Some.T0 + job.readings() / 2 * 4_000_000;
    return new ReadingQuery(
        job.jobId(), null, null, null, middle, null, 0, Long.MAX_VALUE, false, null, 100);
  }

  private static List<Object> charts(JobStatistics statistics) {
    String shown = statistics.characteristics().get(0);
    List<Object> all = new ArrayList<>();
    for (ChartKind kind : statistics.kinds(shown)) {
      all.add(statistics.chart(shown, kind));
    }
    all.add(statistics.summary(shown, Summary.Scope.JOB));
    all.add(statistics.summary(shown, Summary.Scope.PHASE));
    return all;
  }

  private interface Task {
    void run() throws Exception;
  }

  private static void median(String what, Task task) throws Exception {
    double[] took = new double[LOOKS];
    for (int i = 0; i < LOOKS; i++) {
      long start = System.nanoTime();
      task.run();
      took[i] = millis(start);
    }
    System.out.printf("  %-24s%8.2f ms%n", what, StoreLoad.median(took));
  }

  private static void timed(String what, Task task) throws Exception {
    long start = System.nanoTime();
    task.run();
    System.out.printf("%s: %,.0f ms%n", what, millis(start));
  }

  private static double millis(long start) {
    return (System.nanoTime() - start) / 1e6;
  }
}
