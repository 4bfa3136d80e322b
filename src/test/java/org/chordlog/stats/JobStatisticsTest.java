package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.RunRules;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Factors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Phases, exclusions, subgroups, checkpoints and long jobs. */
final class JobStatisticsTest {
  private static final Limits LIMITS = new Limits(1788.0, 1812.0, 1800.0);

  private static JobEvent event(JobEvent.Kind kind, long after) {
    return new JobEvent(
        after,
        1,
        "machine",
        kind,
        after,
        new JobEvent.Content(1.0, null, "lot", "note"),
        new Recorded(after, "me"));
  }

  private static StatisticsPlan plan(SubgroupRule.Kind kind, int size) {
    return new StatisticsPlan(
        "radius",
        "mm",
        LIMITS,
        List.of("start", "middle", "end"),
        new SubgroupRule(kind, size),
        ChartSettings.usual().withRunRules(RunRules.nelson()));
  }

  /** Readings at three positions of each piece; the end is a little tighter. */
  private static void feed(JobStatistics job, int from, int to) {
    for (int id = from; id <= to; id++) {
      Well19937c random = new Well19937c(id);
      String position = List.of("start", "middle", "end").get(id % 3);
      double value = 1800 + 2 * random.nextGaussian() - (id % 3 == 2 ? 3 : 0);
      job.add(new Observation(id, (id + 2) / 3, position, id * 1_000_000L, value, 0.5));
      if (id % 700 == 0) {
        job.happened(event(JobEvent.Kind.CORRECTION, id));
      }
    }
  }

  private static void same(JobStatistics a, JobStatistics b) {
    assertEquals(a.characteristics(), b.characteristics());
    for (String name : a.characteristics()) {
      for (ChartKind kind : a.kinds(name)) {
        assertEquals(a.chart(name, kind), b.chart(name, kind));
      }
      for (Scope scope : Scope.values()) {
        assertEquals(a.summary(name, scope), b.summary(name, scope));
      }
    }
    assertEquals(a.positionEffects(), b.positionEffects());
    assertArrayEquals(a.checkpoint(), b.checkpoint());
  }

  @ParameterizedTest
  @EnumSource(SubgroupRule.Kind.class)
  void restoredCheckpointGoesOnWithTheSameDigits(SubgroupRule.Kind kind) {
    StatisticsPlan plan = plan(kind, kind == SubgroupRule.Kind.INDIVIDUAL ? 1 : 3);
    JobStatistics through = new JobStatistics(plan);
    through.exclude(3105, "bridge slipped");
    feed(through, 1, 3100);
    JobStatistics restored = JobStatistics.restore(plan, through.checkpoint());
    same(through, restored);
    feed(through, 3101, 6200);
    feed(restored, 3101, 6200);
    same(through, restored);
  }

  @Test
  void askingChangesNothing() {
    StatisticsPlan plan = plan(SubgroupRule.Kind.PIECE, 3);
    JobStatistics asked = new JobStatistics(plan);
    JobStatistics quiet = new JobStatistics(plan);
    for (int id = 1; id <= 90; id++) {
      feed(asked, id, id);
      feed(quiet, id, id);
      asked.chart(StatisticsPlan.WHOLE_PIECE, ChartKind.EWMA);
      asked.summary(StatisticsPlan.WHOLE_PIECE, Scope.PHASE);
    }
    same(asked, quiet);
  }

  @Test
  void checkpointOfAnotherPlanIsRefused() {
    byte[] checkpoint = new JobStatistics(plan(SubgroupRule.Kind.PIECE, 3)).checkpoint();
    StatisticsPlan other = plan(SubgroupRule.Kind.CONSECUTIVE, 3);
    assertThrows(BadInput.class, () -> JobStatistics.restore(other, checkpoint));
  }

  @Test
  void longJobsKeepExtremesAndStaySmall() {
    JobStatistics job = new JobStatistics(Data.plan(1, LIMITS, ChartSettings.usual()));
    for (int id = 1; id <= 300_000; id++) {
      double value = id == 123_456 ? 1900 : 1800 + Math.sin(id * 0.7);
      job.add(new Observation(id, id, "middle", id, value, 0));
    }
    ChartSnapshot chart = Data.chart(job, ChartKind.INDIVIDUALS);
    assertEquals(300_000, chart.pointCount());
    assertTrue(chart.points().size() <= 1300, () -> chart.points().size() + " points");
    ChartPoint extreme =
        chart.points().stream().filter(p -> p.number() == 123_456).findFirst().orElseThrow();
    assertFalse(extreme.signals().isEmpty());
    assertTrue(job.checkpoint().length < 1_000_000);
    long[] numbers = chart.points().stream().mapToLong(ChartPoint::number).toArray();
    assertArrayEquals(Arrays.stream(numbers).sorted().distinct().toArray(), numbers);
  }

  @Test
  void freezingReleasingAndAnotherPhase() {
    ChartSettings open = ChartSettings.usual().withBaselinePoints(0);
    JobStatistics job = new JobStatistics(Data.plan(1, LIMITS, open));
    Data.feed(job, 1800, 1801, 1799, 1800.5, 1799.5);
    job.happened(event(JobEvent.Kind.LIMITS_FROZEN, 5));
    double[] frozen = Data.limits(job, ChartKind.INDIVIDUALS);
    Data.feed(job, 1806, 1807, 1808);
    assertArrayEquals(frozen, Data.limits(job, ChartKind.INDIVIDUALS));
    assertEquals(6, Data.firstSignal(Data.chart(job, ChartKind.INDIVIDUALS)));
    job.happened(event(JobEvent.Kind.LIMITS_RELEASED, 8));
    Data.feed(job, 1807);
    assertNotEquals(frozen[1], Data.limits(job, ChartKind.INDIVIDUALS)[1]);
    job.happened(event(JobEvent.Kind.MATERIAL_LOT, 9));
    Data.feed(job, 1790, 1791, 1790);
    ChartSnapshot chart = Data.chart(job, ChartKind.INDIVIDUALS);
    LimitSpan newest = chart.limits().get(chart.limits().size() - 1);
    assertEquals(2, newest.phase());
    assertEquals(10, newest.fromNumber());
    assertEquals((1790 + 1791 + 1790) / 3.0, newest.centre(), 1e-9);
    assertEquals(List.of(6L, 9L, 10L), marks(chart));
    assertEquals(3, job.summary("middle", Scope.PHASE).count());
    assertEquals(12, job.summary("middle", Scope.JOB).count());
  }

  private static List<Long> marks(ChartSnapshot chart) {
    return chart.events().stream().map(ChartSnapshot.EventMark::beforeNumber).toList();
  }

  @Test
  void baselineFreezesByItself() {
    JobStatistics job = new JobStatistics(Data.plan(1, LIMITS, ChartSettings.usual()));
    feedMiddle(job, 24);
    assertFalse(Data.chart(job, ChartKind.INDIVIDUALS).limits().get(0).frozen());
    feedMiddle(job, 1);
    double[] frozen = Data.limits(job, ChartKind.INDIVIDUALS);
    assertTrue(Data.chart(job, ChartKind.INDIVIDUALS).limits().get(0).frozen());
    feedMiddle(job, 100);
    assertArrayEquals(frozen, Data.limits(job, ChartKind.INDIVIDUALS));
  }

  private static void feedMiddle(JobStatistics job, int count) {
    for (int i = 0; i < count; i++) {
      long id = job.lastReadingId() + 1;
      double value = 1800 + new Well19937c(id).nextGaussian();
      job.add(new Observation(id, (int) id, "middle", id, value, 0));
    }
  }

  @Test
  void excludedReadingStaysVisibleAndUndoingBringsItBack() {
    double[] values = {1800, 1801, 1850, 1799, 1800, 1801};
    StatisticsPlan plan = Data.plan(1, LIMITS, ChartSettings.usual());
    JobStatistics with = Data.fed(plan, values);
    JobStatistics without = new JobStatistics(plan);
    assertTrue(without.exclude(3, "bridge slipped"));
    Data.feed(without, values);
    ChartPoint point = Data.chart(without, ChartKind.INDIVIDUALS).points().get(2);
    assertTrue(point.excluded());
    assertEquals("bridge slipped", point.reason());
    assertEquals(1850, point.value());
    assertEquals(1800.2, Data.limits(without, ChartKind.INDIVIDUALS)[1], 1e-9);
    assertEquals(5, without.summary("middle", Scope.JOB).count());
    assertFalse(without.exclude(3, ""), "taken in already: replay");
    JobStatistics undone = new JobStatistics(plan);
    undone.exclude(3, "bridge slipped");
    undone.exclude(3, "");
    Data.feed(undone, values);
    same(with, undone);
  }

  @Test
  void excludingLeavesOtherSubgroupsAsTheyWere() {
    StatisticsPlan plan = Data.plan(3, LIMITS, ChartSettings.usual());
    JobStatistics job = new JobStatistics(plan);
    job.exclude(2, "burr");
    for (long id : new long[] {4, 5, 6}) {
      job.exclude(id, "dropped");
    }
    Data.feed(job, 1800, 1900, 1802, 1, 2, 3, 1797, 1800, 1803);
    List<ChartPoint> points = Data.chart(job, ChartKind.MEAN).points();
    assertEquals(1801, points.get(0).value(), 1e-9);
    assertEquals(2, points.get(0).size());
    assertEquals("1 of 3 excluded: burr", points.get(0).reason());
    assertTrue(points.get(1).excluded());
    assertEquals(7, points.get(2).firstReadingId());
    assertEquals(1800, points.get(2).value(), 1e-9);
  }

  /** Burr (1969): with sizes 2 and 3, σ = Σ(d2/d3²·R)/Σ(d2/d3)². */
  @Test
  void unequalSubgroupsAreWeightedAndHaveTheirOwnLimits() {
    JobStatistics job =
        new JobStatistics(
            new StatisticsPlan(
                "radius",
                "mm",
                LIMITS,
                List.of("middle"),
                new SubgroupRule(SubgroupRule.Kind.PIECE, 25),
                ChartSettings.usual()));
    double[][] pieces = {{1800, 1802}, {1799, 1800, 1803}, {1801, 1801}};
    long id = 0;
    for (int piece = 0; piece < pieces.length; piece++) {
      for (double value : pieces[piece]) {
        job.add(new Observation(++id, piece + 1, "middle", id, value, 0));
      }
    }
    List<LimitSpan> spans = job.chart(StatisticsPlan.WHOLE_PIECE, ChartKind.MEAN).limits();
    Factors two = Factors.of(2);
    Factors three = Factors.of(3);
    double w2 = Math.pow(two.d2() / two.d3(), 2);
    double w3 = Math.pow(three.d2() / three.d3(), 2);
    double sigma = (w2 * 2 / two.d2() + w3 * 4 / three.d2()) / (w2 + w3);
    double grand = (1800 + 1802 + 1799 + 1800 + 1803) / 5.0;
    assertEquals(2, spans.size());
    assertEquals(grand, spans.get(0).centre(), 1e-9);
    assertEquals(3 * sigma / Math.sqrt(2), upper(spans.get(0)) - grand, 1e-9);
    assertEquals(3 * sigma / Math.sqrt(3), upper(spans.get(1)) - grand, 1e-9);
  }

  private static double upper(LimitSpan span) {
    Double upper = span.upper();
    return upper == null ? Double.NaN : upper;
  }

  @Test
  void positionsAreComparedWithinPieces() {
    JobStatistics job = new JobStatistics(plan(SubgroupRule.Kind.PIECE, 3));
    feed(job, 1, 600);
    List<PositionEffect> effects = job.positionEffects();
    assertEquals(
        List.of("middle", "end", "start"), effects.stream().map(PositionEffect::position).toList());
    PositionEffect end = effects.get(1);
    assertTrue(end.differs());
    assertTrue(end.lower() < -2 && -2 < end.upper(), end.toString());
  }

  @Test
  void readingsOutOfOrderAreRefused() {
    JobStatistics job = Data.fed(Data.plan(1, LIMITS, ChartSettings.usual()), 1, 2, 3);
    Observation old = new Observation(3, 1, "middle", 1, 1, 0);
    assertThrows(BadInput.class, () -> job.add(old));
  }
}
