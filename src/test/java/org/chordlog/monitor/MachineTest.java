package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Specification;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A machine's statistics over two jobs against a plain pass over the readings. */
final class MachineTest {
  /** A sequence whose reading lies years after the clock of this computer; no flat. */
  private static final long YEARS_LATER = 100_000_001L;

  @TempDir Path directory;

  @Test
  void jobsExclusionsEventsAndRestartGiveTheFiguresOfAPlainPass() {
    try (Store store = Stores.open(directory)) {
      fill(store);
      MachineVerdict before;
      try (Monitor monitor = new Monitor(store)) {
        before = monitor.readMachine("M", machine -> machine.verdict(0.01));
        assertEquals(plain(store), before);
        store.readings().add(new Exclusion(0, 11, true, "knocked", Some.T0, "me"));
        assertEquals(plain(store), monitor.readMachine("M", machine -> machine.verdict(0.01)));
        assertNotEquals(before, plain(store));
        correct(store, 1_900);
      }
      try (Monitor monitor = new Monitor(store)) {
        assertEquals(plain(store), monitor.readMachine("M", machine -> machine.verdict(0.01)));
      }
    }
  }

  /** Readings before and after a change of the target, also when they are processed again. */
  @Test
  void eachReadingStandsAgainstTheTargetInForce() {
    try (Store store = Stores.open(directory)) {
      long setUp = store.readings().keep(Some.setUp(store.gauges().add(Some.bridge("b"), "me")));
      Job job = store.jobs().add(Some.job("J", "M"), "me");
      store.readings().append(Some.reading("A", 1, job.id(), setUp)).join();
      store.jobs().update(aimedAt(job, 1_850), "me", "drawing changed");
      store.readings().append(Some.reading("A", YEARS_LATER, job.id(), setUp)).join();
      double first = store.readings().all(0, 2).get(0).radius().curvaturePerMm() * 1_800 - 1;
      double second = store.readings().all(0, 2).get(1).radius().curvaturePerMm() * 1_850 - 1;
      double ewma = 0.1 * second + 0.9 * first;
      try (Monitor monitor = new Monitor(store)) {
        assertEquals(ewma, ewma(monitor), 1e-12);
        store.readings().add(new Exclusion(0, 1, true, "knocked", Some.T0, "me"));
        assertEquals(second, ewma(monitor), 1e-12);
        store.readings().add(new Exclusion(0, 1, false, "was right", Some.T0, "me"));
        assertEquals(ewma, ewma(monitor), 1e-12);
      }
    }
  }

  private static double ewma(Monitor monitor) {
    return monitor.readMachine(
        "M",
        machine -> {
          machine.endPiece();
          return java.util.Objects.requireNonNull(machine.verdict(null).ewma());
        });
  }

  private static Job aimedAt(Job job, double targetMm) {
    Specification now =
        new Specification(job.specification().face(), targetMm, targetMm - 12, targetMm + 12);
    return job.withSpecification(now);
  }

  private static void fill(Store store) {
    long setUp = store.readings().keep(Some.setUp(store.gauges().add(Some.bridge("200"), "me")));
    List<Job> jobs = new ArrayList<>();
    for (String machine : List.of("M", "M", "other")) {
      jobs.add(store.jobs().add(Some.job("J", machine), "me"));
    }
    List<CompletableFuture<Reading>> kept = new ArrayList<>();
    for (int i = 1; i <= 2_700; i++) {
      long job = jobs.get(i / 100 % 3).id();
      kept.add(store.readings().append(Some.reading("A", i, job, setUp)));
    }
    kept.forEach(CompletableFuture::join);
  }

  private static void correct(Store store, long after) {
    store
        .jobs()
        .add(
            new JobEvent(
                0,
                1,
                "M",
                JobEvent.Kind.CORRECTION,
                after,
                new JobEvent.Content(1.0, 2.0, "", ""),
                new Recorded(Some.T0, "me")));
  }

  private static MachineVerdict plain(Store store) {
    MachineStatistics statistics = new MachineStatistics();
    Set<Long> excluded = new HashSet<>();
    store.readings().exclusionsOfMachine("M", 0).forEach(each -> excluded.add(each.readingId()));
    List<JobEvent> events = new ArrayList<>(store.jobs().eventsOfMachine("M"));
    for (Reading reading : store.readings().ofMachine("M", 0, 10_000)) {
      while (!events.isEmpty() && events.get(0).afterReadingId() < reading.id()) {
        statistics.happened(events.remove(0));
      }
      Double radius = reading.radius().radiusMm();
      if (radius != null && !excluded.contains(reading.id())) {
        statistics.add(
            reading.jobId(), reading.piece(), reading.wallMicros(), 1 / radius, 1 / 1800.0);
      }
    }
    return statistics.verdict(0.01);
  }
}
