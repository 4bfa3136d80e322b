package org.chordlog.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.bench.JobRates;
import org.chordlog.bench.Rate;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.Data;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.Signal.Side;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** In control or not: error rates, what is found, what holds the verdict and what does not. */
@Tag("slow")
final class ControlWatchTest {
  private static final double ERRORS = 3;

  private static JobStatistics job(int size) {
    return new JobStatistics(Data.plan(size, Limits.NONE, ChartSettings.usual()));
  }

  private static void feed(JobStatistics job, long seed, int count, IntToDoubleFunction level) {
    Well19937c random = new Well19937c(seed);
    for (int i = 1; i <= count; i++) {
      long id = job.lastReadingId() + 1;
      double value = 1000 + random.nextGaussian() + level.applyAsDouble(i);
      job.add(new Observation(id, (int) id, "middle", id, value, 0));
    }
  }

  private static Spell only(ControlVerdict verdict) {
    ControlState.NotInControl not =
        assertInstanceOf(ControlState.NotInControl.class, verdict.state(), verdict.toString());
    assertEquals(1, not.spells().size(), verdict.toString());
    return not.spells().get(0);
  }

  /** The stated rate, within three standard errors, at each length. */
  @Tag("slow")
  @ParameterizedTest
  @CsvSource({"1, 1500", "2, 800", "5, 800", "10, 800"})
  void aSteadyJobIsCalledInAtMostFivePercentOfLooks(int size, int jobs) {
    for (Rate rate : new JobRates(size, 0).steady(jobs, 11, 25, 50, 100, 200, 500, 1000)) {
      assertTrue(rate.percent() <= 5 + ERRORS * rate.error(), rate.toString());
    }
  }

  /** Whole jobs, checked in steps of 2,500 readings. */
  @Tag("slow")
  @Test
  void alsoInLongJobs() {
    int[] lengths = {2_500, 5_000, 7_500, 10_000, 12_500, 15_000, 17_500, 20_000};
    long called = 0;
    long looks = 0;
    for (Rate rate : new JobRates(1, 0).steady(40, 12, lengths)) {
      called += rate.count();
      looks += rate.of();
    }
    Rate all = Rate.of(called, looks);
    assertTrue(all.percent() <= 5 + ERRORS * all.error(), all.toString());
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 10})
  void aShiftIsFoundWithin12PointsAndACreepWithin40(int size) {
    JobRates rates = new JobRates(size, 0);
    Rate shift = rates.found(800, 13, 25, 12, point -> 1.5);
    assertTrue(shift.percent() >= 90 - ERRORS * shift.error(), shift.toString());
    Rate creep = rates.found(400, 14, 25, 40, point -> 0.05 * point);
    assertTrue(creep.percent() >= 90, creep.toString());
  }

  @Test
  void aScatterTwiceAsLargeIsFound() {
    Rate found = new JobRates(5, 0).found(200, 15, 50, 12, point -> 0, 2);
    assertTrue(found.percent() > 95, found.toString());
  }

  /** Since the 61st reading the level is 4 sigma higher, for good. */
  @Test
  void aLastingShiftIsCalledWithItsBeginningAndStays() {
    JobStatistics job = job(1);
    feed(job, 1, 300, i -> i > 60 ? 4 : 0);
    Spell spell = only(job.control("middle"));
    assertEquals(Spell.Kind.LEVEL, spell.kind());
    assertEquals(Side.ABOVE, spell.side());
    assertEquals(61.0, (double) spell.since().lastReadingId(), 2);
    assertTrue(spell.called().lastReadingId() - 60 <= 4, spell.toString());
    assertEquals(300, spell.newest().lastReadingId());
    assertTrue(spell.chance() < 1e-3, spell.toString());
  }

  /** Four low points, then one far above: it is no part of a lower level. */
  @ParameterizedTest
  @ValueSource(ints = {1, 3})
  void aFarPointIsNeverToldAsALevelOnTheOtherSide(int size) {
    double[] off = {-1.5, -1.6, -3.2, -1.4, 4.6};
    for (int seed = 1; seed <= 100; seed++) {
      JobStatistics job = job(size);
      feed(job, seed, 60 * size, i -> i > 50 * size && i <= 55 * size ? at(off, i, size) : 0);
      for (Spell spell : job.control("middle").history()) {
        boolean far = spell.since().number() == 55 || spell.newest().number() == 55;
        assertFalse(far && spell.side() == Side.BELOW, "seed " + seed + ": " + spell);
      }
    }
  }

  private static double at(double[] off, int reading, int size) {
    return off[(reading - 50 * size - 1) / size] / Math.sqrt(size);
  }

  @Test
  void aFarPointHoldsTheVerdictForAWhileAndThenIsHistory() {
    JobStatistics job = job(1);
    feed(job, 2, 60, i -> i == 56 ? -9 : 0);
    Spell spell = only(job.control("middle"));
    assertEquals(Spell.Kind.FAR_POINT, spell.kind());
    assertEquals(Side.BELOW, spell.side());
    assertEquals(56, spell.since().lastReadingId());
    feed(job, 3, 20, i -> 0);
    ControlVerdict later = job.control("middle");
    assertInstanceOf(ControlState.InControl.class, later.state(), later.toString());
    assertEquals(56, later.history().get(0).since().lastReadingId());
    assertTrue(later.history().get(0).chance() < 0.01, "no chance event");
  }

  @Test
  void anAnsweredSignalHoldsNothingAndStaysInTheRecord() {
    JobStatistics job = job(1);
    feed(job, 2, 60, i -> i == 56 ? -9 : 0);
    job.answer(Set.of(new SignalKey(ChartKind.MOVING_RANGE, 56)));
    assertTrue(job.control("middle").notInControl(), "answered on a chart of the spread");
    job.answer(Set.of(new SignalKey(ChartKind.INDIVIDUALS, 56)));
    ControlVerdict answered = job.control("middle");
    assertFalse(answered.notInControl(), answered.toString());
    assertTrue(answered.history().get(0).answered());
    assertTrue(
        job.summary("middle", Scope.PHASE).cautions().stream()
            .noneMatch(each -> each.kind().name().equals("NOT_IN_CONTROL")));
  }

  /** A shift that goes on after the answer is called anew, by the points after it alone. */
  @Test
  void aShiftThatGoesOnAfterTheAnswerIsCalledAgain() {
    JobStatistics job = job(1);
    feed(job, 4, 70, i -> i > 60 ? 3 : 0);
    Set<SignalKey> answer = Set.of(new SignalKey(ChartKind.INDIVIDUALS, 70));
    job.answer(answer);
    assertFalse(job.control("middle").notInControl());
    feed(job, 5, 12, i -> 3);
    Spell spell = only(job.control("middle"));
    assertTrue(spell.since().lastReadingId() > 70, spell.toString());
    assertFalse(spell.answered());
    assertTrue(job.control("middle").history().stream().anyMatch(Spell::answered));
  }

  @Test
  void aChangeStartsAnewAndWhatCameBeforeIsHistory() {
    JobStatistics job = job(1);
    feed(job, 6, 80, i -> i > 60 ? 4 : 0);
    assertTrue(job.control("middle").notInControl());
    job.happened(
        new JobEvent(
            1,
            1,
            "m",
            JobEvent.Kind.CORRECTION,
            80,
            new JobEvent.Content(2.0, 1.5, "", ""),
            new Recorded(1, "me")));
    feed(job, 7, 10, i -> 2);
    ControlVerdict verdict = job.control("middle");
    assertEquals(new ControlState.TooFew(10, 25), verdict.state());
    assertEquals(2, verdict.phase());
    assertEquals(1, verdict.history().get(0).phase());
    feed(job, 8, 20, i -> 2);
    assertInstanceOf(ControlState.InControl.class, job.control("middle").state());
  }

  /** A master measured as the fourth piece would hide everything after it. */
  @Test
  void aFarPointAmongTheFirstOnesHidesNothing() {
    JobStatistics job = job(1);
    feed(job, 9, 60, i -> i == 4 ? 400 : i > 40 ? 3 : 0);
    assertEquals(Spell.Kind.LEVEL, only(job.control("middle")).kind());
    assertEquals(4, job.control("middle").history().get(0).since().lastReadingId());
  }

  @Test
  void aKnownStandardIsWhatPointsAreComparedWith() {
    ChartSettings known = ChartSettings.usual().withStandard(new ChartSettings.Standard(1000, 1));
    JobStatistics job = new JobStatistics(Data.plan(1, Limits.NONE, known));
    feed(job, 10, 12, i -> 2);
    assertEquals(Side.ABOVE, only(job.control("middle")).side());
  }

  @Test
  void excludedReadingsAndStepsOfACoarseGaugeRaiseNothing() {
    JobStatistics job = job(1);
    job.exclude(30, "knocked");
    for (int id = 1; id <= 40; id++) {
      double value = id == 30 ? 2000 : id % 11 == 0 ? 1001 : 1000;
      job.add(new Observation(id, id, "middle", id, value, 0));
    }
    ControlVerdict verdict = job.control("middle");
    assertInstanceOf(ControlState.InControl.class, verdict.state(), verdict.toString());
  }

  @Test
  void aCheckpointGoesOnWithTheSameDigits() {
    for (int size : new int[] {1, 3}) {
      JobStatistics job = job(size);
      feed(job, 16, 200, i -> i > 150 ? 1 : 0);
      JobStatistics restored = JobStatistics.restore(job.plan(), job.checkpoint());
      feed(job, 17, 50, i -> 1);
      feed(restored, 17, 50, i -> 1);
      assertEquals(job.control("middle"), restored.control("middle"));
      assertEquals(List.of(job.checkpoint().length), List.of(restored.checkpoint().length));
    }
  }
}
