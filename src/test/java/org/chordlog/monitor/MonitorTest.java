package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.chordlog.Await;
import org.chordlog.Patience;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Specification;
import org.chordlog.station.Announcement;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class MonitorTest {
  @TempDir Path directory;
  private Store store;
  private Job job;
  private long setUp;
  private long sequence;

  @BeforeEach
  void open() {
    store = Stores.open(directory);
    job = store.jobs().add(Some.job("J", "M"), "me");
    setUp = store.readings().keep(Some.setUp(store.gauges().add(Some.bridge("200"), "me")));
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void whoeverLooksSeesEveryCommittedReading() {
    try (Monitor monitor = new Monitor(store)) {
      append(100);
      assertEquals(100, monitor.standing(job.id()).count());
      assertEquals(recomputed(), monitor.read(job.id(), MonitorTest::seen));
      append(1);
      assertEquals(recomputed(), monitor.read(job.id(), MonitorTest::seen));
    }
  }

  @Test
  void anAnnouncedReadingIsTakenInWithoutALook() throws Exception {
    try (Monitor monitor = new Monitor(store)) {
      append(999);
      assertEquals(0, monitor.standing(job.id()).behind());
      Reading last = append(1).get(0);
      monitor.accept(new Announcement.Taken("A", last));
      Await.until(() -> !store.checkpoints().of("job/" + job.id()).isEmpty());
    }
  }

  @Test
  void aRestartGoesOnWithTheSameDigits() {
    List<Object> before;
    try (Monitor monitor = new Monitor(store)) {
      append(2_500);
      event(JobEvent.Kind.CORRECTION, 2_400);
      before = monitor.read(job.id(), MonitorTest::seen);
    }
    assertEquals(2_500, store.checkpoints().of("job/" + job.id()).get(0).readingId());
    try (Monitor monitor = new Monitor(store)) {
      assertEquals(before, monitor.read(job.id(), MonitorTest::seen));
      append(7);
      assertEquals(recomputed(), monitor.read(job.id(), MonitorTest::seen));
    }
  }

  @Test
  void aSavedStateWithOneFlippedBitIsNotUsed() {
    try (Monitor monitor = new Monitor(store)) {
      append(150);
      assertEquals(0, monitor.standing(job.id()).behind());
    }
    Checkpoints.Slot newest = store.checkpoints().of("job/" + job.id()).get(0);
    byte[] sound = store.checkpoints().find(newest).orElseThrow();
    for (int place : new int[] {7, 15, sound.length / 2, sound.length - 9, sound.length - 1}) {
      byte[] damaged = sound.clone();
      damaged[place] ^= 1;
      store.checkpoints().put(newest, damaged);
      try (Monitor monitor = new Monitor(store)) {
        assertEquals(recomputed(), monitor.read(job.id(), MonitorTest::seen));
      }
    }
  }

  @Test
  void exclusionsUndoingAndLateEventsGiveTheDigitsOfARecomputation() {
    try (Monitor monitor = new Monitor(store)) {
      append(3_100);
      List<Object> plain = monitor.read(job.id(), MonitorTest::seen);
      exclude(3_050, true);
      assertEquals(recomputed(), monitor.read(job.id(), MonitorTest::seen));
      exclude(17, true);
      event(JobEvent.Kind.MATERIAL_LOT, 900);
      assertEquals(recomputed(), monitor.read(job.id(), MonitorTest::seen));
      exclude(17, false);
      exclude(3_050, false);
      event(JobEvent.Kind.NOTE, 3_100);
      append(20);
      assertEquals(recomputed(), monitor.read(job.id(), MonitorTest::seen));
      assertTrue(!plain.equals(monitor.read(job.id(), MonitorTest::seen)));
    }
  }

  @Test
  void changedLimitsStartTheStatisticsAnew() {
    try (Monitor monitor = new Monitor(store)) {
      append(1_200);
      String tag = monitor.standing(job.id()).tag();
      changeLimits();
      assertEquals(recomputed(), monitor.read(job.id(), MonitorTest::seen));
      assertTrue(!tag.equals(monitor.standing(job.id()).tag()));
    }
  }

  @Test
  void anUnknownJobIsRefused() {
    try (Monitor monitor = new Monitor(store)) {
      BadInput e = assertThrows(BadInput.class, () -> monitor.standing(99));
      assertEquals("job", e.faults().get(0).field());
    }
  }

  private void changeLimits() {
    Specification tighter = new Specification(job.specification().face(), 1800, 1790.0, 1810.0);
    job = job.withSpecification(tighter);
    store.jobs().update(job, "me", "tighter");
  }

  private List<Reading> append(int count) {
    List<CompletableFuture<Reading>> kept = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      kept.add(store.readings().append(Some.reading("A", ++sequence, job.id(), setUp)));
    }
    return kept.stream()
        .map(each -> each.orTimeout(Patience.now().toSeconds(), TimeUnit.SECONDS).join())
        .toList();
  }

  private void exclude(long readingId, boolean out) {
    store.readings().add(new Exclusion(0, readingId, out, "knocked", Some.T0, "me"));
  }

  private void event(JobEvent.Kind kind, long after) {
    store
        .jobs()
        .add(
            new JobEvent(
                0,
                job.id(),
                "M",
                kind,
                after,
                new JobEvent.Content(null, null, "", ""),
                new Recorded(Some.T0, "me")));
  }

  /** Straight through: every exclusion in force first, then readings and events in order. */
  private List<Object> recomputed() {
    JobStatistics statistics =
        new JobStatistics(StatisticsPlan.ofRadius(job.specification(), job.plan()));
    for (Exclusion each : store.readings().exclusionsOfJob(job.id())) {
      statistics.exclude(each.readingId(), each.excluded() ? each.reason() : "");
    }
    Observations observations = new Observations(store.readings());
    List<JobEvent> events = store.jobs().eventsOfJob(job.id());
    for (Reading reading : store.readings().ofJob(job.id(), 0, 10_000)) {
      Observation observation = observations.of(reading);
      if (observation != null) {
        statistics.add(observation);
      }
      events.stream()
          .filter(event -> event.afterReadingId() == reading.id())
          .forEach(statistics::happened);
    }
    return seen(statistics);
  }

  private static List<Object> seen(JobStatistics statistics) {
    List<Object> seen = new ArrayList<>();
    for (String name : statistics.characteristics()) {
      for (ChartKind kind : statistics.kinds(name)) {
        ChartSnapshot chart = statistics.chart(name, kind);
        seen.add(chart.points());
        seen.add(chart.limits());
      }
      seen.add(statistics.summary(name, Scope.JOB));
      seen.add(statistics.summary(name, Scope.PHASE));
    }
    return seen;
  }
}
