package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.file.Path;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When events of jobs are told, and what the advice on the rollers makes of them. */
final class EventsInAdviceTest {
  private static final String NEW_LOT = "New lot: measure its first piece.";

  @TempDir Path directory;
  private Store store;
  private Monitor monitor;
  private long setUp;
  private long sequence;

  @BeforeEach
  void open() {
    store = Stores.open(directory);
    monitor = new Monitor(store);
    setUp = store.readings().keep(Some.setUp(store.gauges().add(Some.bridge("200"), "me")));
  }

  @AfterEach
  void close() {
    monitor.close();
    store.close();
  }

  private Job job(String name) {
    return store.jobs().add(Some.job(name, "M"), "me");
  }

  private long measured(Job job, int readings) {
    long last = 0;
    for (int i = 0; i < readings; i++) {
      last = store.readings().append(Some.reading("A", ++sequence, job.id(), setUp)).join().id();
    }
    return last;
  }

  private void told(
      Job job, JobEvent.Kind kind, long after, String lot, @Nullable Double settingAfter) {
    JobEvent.Content content = new JobEvent.Content(null, settingAfter, lot, "");
    Recorded recorded = new Recorded(Some.T0 + sequence * 1_000_000, "me");
    store.jobs().add(new JobEvent(0, job.id(), "M", kind, after, content, recorded));
  }

  private CorrectionSnapshot advice(Job job) {
    return monitor.advice(job, "");
  }

  private String text(Job job) {
    return advice(job).advice().text().toString();
  }

  /** Within a piece, what is measured of it from then on is of the new lot. */
  @Test
  void aLotThatPiecesWereMeasuredOfIsNotAwaited() {
    measured(job("first"), 9);
    Job job = job("second");
    long last = measured(job, 6);
    String measured = text(job);
    told(job, JobEvent.Kind.MATERIAL_LOT, 0, "B-1", null);
    assertEquals(measured, text(job));
    told(job, JobEvent.Kind.MATERIAL_LOT, last - 3, "B-2", null);
    assertNotEquals(NEW_LOT, text(job));
    told(job, JobEvent.Kind.MATERIAL_LOT, last - 1, "B-3", null);
    assertNotEquals(NEW_LOT, text(job));
    told(job, JobEvent.Kind.MATERIAL_LOT, last, "B-4", null);
    assertEquals(NEW_LOT, text(job));
  }

  /** It was told before the first piece of the machine, and forgotten with the job before. */
  @Test
  void aSetUpBeforeTheFirstPieceOfALaterJobIsKnown() {
    measured(job("first"), 6);
    Job job = job("second");
    assertNull(advice(job).setting());
    told(job, JobEvent.Kind.SET_UP, 0, "", 25.6);
    assertEquals(25.6, advice(job).setting());
    measured(job, 3);
    assertEquals(25.6, advice(job).setting());
    told(job, JobEvent.Kind.NOTE, 0, "", null);
    assertEquals(25.6, advice(job).setting(), "as from the first reading on");
  }
}
