package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class JobPartsTest {
  @TempDir Path directory;
  private Store store;
  private Job job;
  private long setUp;
  private Monitor monitor;

  @BeforeEach
  void open() {
    store = Stores.open(directory);
    job = store.jobs().add(Some.job("J", "M"), "me");
    setUp = store.readings().keep(Some.setUp(store.gauges().add(Some.bridge("200"), "me")));
    monitor = new Monitor(store);
  }

  @AfterEach
  void close() {
    monitor.close();
    store.close();
  }

  /** One at a place of a piece; every seventh is a flat. */
  private Reading measured(int sequence, Circumstances circumstances) {
    Reading reading = Some.reading("A", sequence, job.id(), setUp);
    return store.readings().append(reading.withCircumstances(circumstances)).join();
  }

  private static Circumstances of(String lot) {
    return Circumstances.UNRECORDED.withMaterialLot(lot.isEmpty() ? null : lot);
  }

  private String first() {
    return monitor.read(job.id(), running -> running.characteristics().get(0));
  }

  @Test
  void eachLotHasTheFiguresOfItsOwnReadings() {
    for (int i = 1; i <= 60; i++) {
      measured(i, of(i <= 30 ? "A-117" : "B-204"));
    }
    store.readings().add(new Exclusion(0, 1, true, "knocked", Some.T0, "me"));
    List<LotSummary> lots = monitor.lots(job.id(), first());
    assertEquals(List.of("A-117", "B-204"), lots.stream().map(LotSummary::lot).toList());
    Slice second = new Slice(30, 60, null, null);
    Slice named = new Slice(0, Long.MAX_VALUE, null, null, "B-204");
    for (Slice slice : List.of(second, named)) {
      assertEquals(mean(slice), lots.get(1).summary().figure(FigureKind.MEAN).orElseThrow());
    }
    assertEquals(31, lots.get(1).firstReadingId());
    assertEquals(60, lots.get(1).lastReadingId());
    assertEquals(10, lots.get(1).pieces());
    assertEquals(2, lots.get(0).firstReadingId());
  }

  /** As the statistics of those readings alone have it, and the file of them. */
  @Test
  void noRangeIsCountedAcrossACorrectionWithinALot() {
    for (int i = 1; i <= 60; i++) {
      measured(i, of("A-117"));
    }
    FigureKind within = FigureKind.WITHIN;
    Object before = monitor.lots(job.id(), "start").get(0).summary().figure(within).orElseThrow();
    JobEvent correction =
        new JobEvent(
            0,
            job.id(),
            job.machine(),
            JobEvent.Kind.CORRECTION,
            31,
            new JobEvent.Content(25.7, 25.8, "", ""),
            new Recorded(Some.T0, "me"));
    JobEvent unused = store.jobs().add(correction);
    Object after = monitor.lots(job.id(), "start").get(0).summary().figure(within).orElseThrow();
    assertNotEquals(before, after);
    Slice lot = new Slice(0, Long.MAX_VALUE, null, null, "A-117");
    assertEquals(
        monitor.read(
            job.id(),
            lot,
            all ->
                all.summary("start", org.chordlog.stats.control.Scope.JOB)
                    .figure(within)
                    .orElseThrow()),
        after);
  }

  private Object mean(Slice slice) {
    return monitor.read(job.id(), slice, JobPartsTest::mean);
  }

  private static Object mean(JobStatistics statistics) {
    return statistics
        .summary(statistics.characteristics().get(0), org.chordlog.stats.control.Scope.JOB)
        .figure(FigureKind.MEAN)
        .orElseThrow();
  }

  @Test
  void aLotThatComesBackIsOneLotAndWhereNoneIsRecordedItIsTheJobs() {
    for (int i = 1; i <= 6; i++) {
      measured(i, of(List.of("A", "A", "B", "", "A", "B").get(i - 1)));
    }
    List<LotSummary> lots = monitor.lots(job.id(), "start");
    assertEquals(List.of("A", "B", job.materialLot()), lots.stream().map(LotSummary::lot).toList());
    assertEquals(5, lots.get(0).lastReadingId());
  }

  @Test
  void aPieceRolledAgainTellsWhatThePassDid() {
    Reading before = measured(1, of("A"));
    store
        .readings()
        .add(new Exclusion(0, before.id(), true, Exclusion.rolledAgainAfter(1), Some.T0, "me"));
    Reading after = again(before);
    PassSummary passes = monitor.passes(job.id());
    assertEquals(1, passes.pieces());
    assertEquals(2, passes.meanPasses());
    assertEquals(1, passes.rolledAgain());
    assertEquals(
        Objects.requireNonNull(after.radius().radiusMm())
            - Objects.requireNonNull(before.radius().radiusMm()),
        passes.passes().get(0).meanChangeMm(),
        1e-9);
    assertEquals(1, monitor.lots(job.id(), "start").get(0).summary().count());
  }

  /** The same place in its second pass. */
  private Reading again(Reading before) {
    Reading other = Some.reading("A", 4, job.id(), setUp);
    Reading next =
        new Reading(
            0,
            other.source(),
            before.place(),
            other.measured(),
            other.result(),
            of("A").withPass(2));
    return store.readings().append(next).join();
  }

  @Test
  void aReadingLeftOutForAnotherReasonIsNoPass() {
    Reading before = measured(1, of("A"));
    store.readings().add(new Exclusion(0, before.id(), true, "knocked", Some.T0, "me"));
    assertEquals(PassSummary.NONE, monitor.passes(job.id()));
  }
}
