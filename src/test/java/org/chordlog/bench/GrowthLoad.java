package org.chordlog.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.chart.PictureSize;
import org.chordlog.chart.Theme;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.Scope;
import org.chordlog.store.Kept;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sqlite.SqliteStore;

/**
 * What a look costs at jobs of 1e3, 1e5, 1e6 and 1e7 readings (or the counts given): the
 * statistics' restart, a new reading with its charts, pages and searches. Medians of {@value
 * Looks#LOOKS} looks, in ms.
 */
public final class GrowthLoad {
  private static final int UNDER_WAY = 10_000;

  /** {@code middle}: id of a reading in its midst. */
  record Grown(long jobId, long setUpId, long readings, long middle) {}

  private GrowthLoad() {}

  public static void main(String[] arguments) throws Exception {
    long[] counts =
        arguments.length == 0
            ? new long[] {1_000, 100_000, 1_000_000, 10_000_000}
            : Arrays.stream(arguments).mapToLong(Long::parseLong).distinct().toArray();
    Path directory = Files.createTempDirectory("growth-load");
    try {
      timed("all of it", () -> look(directory, List.copyOf(fill(directory, counts).values())));
    } finally {
      StoreLoad.delete(directory);
    }
  }

  private static Map<Long, Grown> fill(Path directory, long[] counts) throws Exception {
    Map<Long, Grown> jobs = new LinkedHashMap<>();
    try (Store store = Stores.open(directory);
        Monitor monitor = new Monitor(store)) {
      for (long count : counts) {
        Reading first = Kept.first(store);
        long middle = store.readings().lastId() + count / 2;
        Grown job = new Grown(first.jobId(), first.setUpId(), count, middle);
        jobs.put(count, job);
        timed("%,d readings kept".formatted(count), () -> append(store, job, 1, count));
        timed("their statistics", () -> catchUp(monitor, job));
      }
    }
    System.out.printf("file %,d bytes%n", Files.size(directory.resolve(SqliteStore.FILE_NAME)));
    return jobs;
  }

  private static void append(Store store, Grown job, long from, long to)
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

  /** Jobs take turns at each look, so that none of them has the cold start to itself. */
  private static void look(Path directory, List<Grown> jobs) throws Exception {
    for (Grown job : jobs) {
      long start = System.nanoTime();
      try (Store store = Stores.open(directory);
          Monitor monitor = new Monitor(store)) {
        monitor.read(job.jobId(), GrowthLoad::everything);
        System.out.printf(
            "open, every chart and statistic of %,d readings: %.0f ms%n",
            job.readings(), millis(start));
      }
    }
    try (Store store = Stores.open(directory);
        Monitor monitor = new Monitor(store);
        ChartRenderer renderer = ChartRenderer.start()) {
      Looks looks = new Looks(jobs);
      Map<Grown, long[]> next = new LinkedHashMap<>();
      jobs.forEach(job -> next.put(job, new long[] {job.readings()}));
      looks.at(
          "a reading kept, then every chart and statistic",
          job -> {
            append(store, job, next.get(job)[0] + 1, ++next.get(job)[0]);
            monitor.read(job.jobId(), GrowthLoad::everything);
          });
      looks.at(
          "every chart and statistic again",
          job -> monitor.read(job.jobId(), GrowthLoad::everything));
      looks.at("the first chart drawn", job -> draw(monitor, renderer, job));
      pages(store, looks);
      looks.print();
    }
  }

  private static void draw(Monitor monitor, ChartRenderer renderer, Grown job) {
    Drawing drawing =
        monitor
            .read(
                job.jobId(),
                statistics -> {
                  String shown = statistics.characteristics().get(0);
                  return PictureKind.INDIVIDUALS.draw(
                      kind -> Optional.of(statistics.chart(shown, kind)));
                })
            .orElseThrow();
    renderer.draw(drawing, new PictureSize(1000, 560), Theme.PAGE).join();
  }

  private static void pages(Store store, Looks looks) throws Exception {
    looks.at("newest 100", job -> store.readings().latestOfJob(job.jobId(), Long.MAX_VALUE, 100));
    looks.at("100 from the middle", job -> store.readings().ofJob(job.jobId(), job.middle(), 100));
    looks.at("count", job -> store.readings().countOfJob(job.jobId()));
    looks.at("100 at a position", job -> store.readings().search(position(job)));
    looks.at("100 undecided", job -> store.readings().search(undecided(job)));
    looks.at("100 of a time span", job -> store.readings().search(time(job)));
  }

  private static ReadingQuery position(Grown job) {
    return ReadingQuery.newest(job.jobId(), 100).at("end");
  }

  private static ReadingQuery undecided(Grown job) {
    return ReadingQuery.newest(job.jobId(), 100).decided(Decision.UNDECIDED);
  }

  private static ReadingQuery time(Grown job) {
    long middle = Some.T0 + job.readings() / 2 * 4_000_000;
    return ReadingQuery.oldest(job.jobId(), 100).between(middle, null);
  }

  /** Of the whole piece and of each position. */
  private static List<Object> everything(JobStatistics statistics) {
    List<Object> all = new ArrayList<>();
    for (String shown : statistics.characteristics()) {
      for (ChartKind kind : statistics.kinds(shown)) {
        all.add(statistics.chart(shown, kind));
      }
      for (Scope scope : Scope.values()) {
        all.add(statistics.summary(shown, scope));
        all.add(statistics.distribution(shown, scope));
      }
    }
    all.add(statistics.comparison());
    all.add(statistics.positionEffects());
    return all;
  }

  interface Task {
    void run() throws Exception;
  }

  private static void timed(String what, Task task) throws Exception {
    long start = System.nanoTime();
    task.run();
    System.out.printf("%s: %,.0f ms%n", what, millis(start));
  }

  static double millis(long start) {
    return (System.nanoTime() - start) / 1e6;
  }
}
