package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a look takes in at most, and how many jobs are held. */
final class BoundsTest {
  private static final int MANY = 2 * CatchUp.READINGS_A_READ + 700;
  private static final int JOBS = Monitor.JOBS_HELD + 6;

  @TempDir Path directory;
  private Store store;
  private long setUp;
  private long sequence;

  @BeforeEach
  void open() {
    store = Stores.open(directory);
    setUp = store.readings().keep(Some.setUp(store.gauges().add(Some.bridge("b"), "me")));
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void aLookTakesInABoundedPartAndSaysWhatIsToCome() {
    Job job = filled("J", MANY);
    try (Monitor monitor = new Monitor(store)) {
      assertEquals(MANY - CatchUp.READINGS_A_READ, monitor.standing(job.id()).behind());
      assertEquals(MANY - CatchUp.READINGS_A_READ, behind(monitor));
      assertEquals(700, behind(monitor));
      assertEquals(0, behind(monitor));
    }
  }

  /** An older database has no checkpoint; once caught up, a kill costs nothing. */
  @Test
  void aStartBringsAllUpToDateInTheBackgroundAndKeepsIt() throws Exception {
    Job job = filled("J", MANY);
    long last = store.readings().lastId();
    Monitor killed = new Monitor(store);
    killed.warm();
    Await.until(() -> newestKept("job/" + job.id()) == last && newestKept("machine/M") == last);
    try (Monitor next = new Monitor(store)) {
      assertEquals(0, behind(next));
      assertEquals(killed.read(job.id(), BoundsTest::seen), next.read(job.id(), BoundsTest::seen));
      assertEquals(verdict(killed), verdict(next));
      assertEquals(MANY, next.standing(job.id()).count());
    } finally {
      killed.close();
    }
  }

  @Test
  void jobsBeyondTheBoundAreKeptAndComeBackWithTheSameDigits() {
    Map<Long, List<Summary>> before = new HashMap<>();
    try (Monitor monitor = new Monitor(store)) {
      for (int i = 0; i < JOBS; i++) {
        Job job = filled("J" + i, 30);
        before.put(job.id(), monitor.read(job.id(), BoundsTest::seen));
        assertTrue(monitor.held() <= Monitor.JOBS_HELD, "held " + monitor.held());
      }
      long released = before.keySet().stream().min(Long::compare).orElseThrow();
      assertFalse(store.checkpoints().of("job/" + released).isEmpty());
      before.forEach((id, seen) -> assertEquals(seen, monitor.read(id, BoundsTest::seen)));
      append(released, 5);
      assertEquals(35, monitor.standing(released).count());
      assertEquals(Monitor.JOBS_HELD, monitor.held());
    }
  }

  /** As when memory runs out: nothing continues from what is half done. */
  @Test
  void whatBreaksOffMidwayIsGoneOverAgain() {
    Job job = filled("J", 40);
    boolean[] broken = {false};
    RunningJob breaking =
        new RunningJob(store, job.id()) {
          @Override
          void take(JobStatistics statistics, Reading reading) {
            super.take(statistics, reading);
            if (reading.id() == 20 && !broken[0]) {
              broken[0] = true;
              throw new OutOfMemoryError("invented");
            }
          }
        };
    assertThrows(OutOfMemoryError.class, () -> breaking.read(BoundsTest::seen));
    assertEquals(
        new RunningJob(store, job.id()).read(BoundsTest::seen), breaking.read(BoundsTest::seen));
  }

  private Job filled(String name, int readings) {
    Job job = store.jobs().add(Some.job(name, "M"), "me");
    append(job.id(), readings);
    return job;
  }

  private void append(long job, int readings) {
    List<CompletableFuture<Reading>> kept = new ArrayList<>();
    for (int i = 0; i < readings; i++) {
      kept.add(store.readings().append(Some.reading("A", ++sequence, job, setUp)));
    }
    kept.forEach(CompletableFuture::join);
  }

  private long newestKept(String owner) {
    return store.checkpoints().of(owner).stream().mapToLong(s -> s.readingId()).max().orElse(0);
  }

  private static long behind(Monitor monitor) {
    return monitor.readMachine("M", (statistics, behind) -> behind);
  }

  private static MachineVerdict verdict(Monitor monitor) {
    return monitor.readMachine("M", machine -> machine.verdict(0.01));
  }

  private static List<Summary> seen(JobStatistics statistics) {
    return statistics.characteristics().stream()
        .map(name -> statistics.summary(name, Scope.JOB))
        .toList();
  }
}
