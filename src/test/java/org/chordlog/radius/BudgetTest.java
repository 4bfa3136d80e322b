package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** GUM (JCGM 100:2008): H.1 read in a copy, the rest from memory and recomputed. */
final class BudgetTest {
  private static BudgetLine line(String source, double contribution, @Nullable Double degrees) {
    return BudgetLine.of(
        source, Sentence.EMPTY, "nm", Distribution.NORMAL, contribution, 1, degrees);
  }

  /** H.1: u 32 nm, ν 16.7, cut to 16 where t99 = 2.92, U99 = 93 nm. */
  @Test
  void endGauge() {
    Budget d =
        Budget.of(
            "nm", List.of(line("d", 5.8, 24.0), line("d1", 3.9, 5.0), line("d2", 6.7, 8.0)), 0);
    assertEquals(9.7, d.combined(), 0.05);
    assertEquals(25.6, Math.pow(9.7, 4) / Math.pow(d.combined(), 4) * d.degreesOfFreedom(), 0.05);
    Budget length =
        Budget.of(
            "nm",
            List.of(
                line("standard", 25, 18.0),
                line("d", 9.7, 25.6),
                line("δα", 0.1 * 50.000623 * 0.58, 50.0),
                line("δθ", 50.000623 * 11.5 * 0.029, 2.0)),
            0);
    assertEquals(32, length.combined(), 0.5);
    assertEquals(16.7, length.degreesOfFreedom(), 0.05);
    double t99 = new StudentT(0.995).quantile(length.degreesOfFreedom());
    assertEquals(2.92, t99, 0.005);
    assertEquals(93, t99 * length.combined(), 0.5);
  }

  /** G.4.1: 1.03 %, ν 19.0, t95 = 2.09, U95 = 2.15 %. */
  @Test
  void threeRelativeUncertainties() {
    Budget y =
        Budget.of(
            "%", List.of(line("1", 0.25, 9.0), line("2", 0.57, 4.0), line("3", 0.82, 14.0)), 0);
    assertEquals(1.03, y.combined(), 0.005);
    assertEquals(19.0, y.degreesOfFreedom(), 0.05);
    double t95 = new StudentT(0.975).quantile(Math.rint(y.degreesOfFreedom()));
    assertEquals(2.09, t95, 0.005);
    assertEquals(2.15, t95 * y.combined(), 0.005);
  }

  /** 4.4.5: bounds of ± 4 give 2.3; F.2.2.1: a step of 1 gives 0.29. */
  @Test
  void boundsAndSteps() {
    DepthSpread spread = DepthSpread.of(new Indicator(1, 4, 100), null);
    assertEquals(2.3, Math.sqrt(spread.permissible()), 0.05);
    assertEquals(0.29, Math.sqrt(spread.step()), 0.005);
  }

  @Test
  void boundsAloneHaveInfinitelyManyDegreesAndKIsTwo() {
    Budget budget = Budget.of("mm", List.of(line("1", 1, null)), 0);
    assertEquals(StudentT.MOST_DEGREES, budget.degreesOfFreedom());
    assertEquals(2, budget.coverageFactor(), 1e-12);
  }

  /** Rectangular ± 0.02 and twice ± 0.005 with k = 2, drawn 200,000 times; all normal: 95.45 %. */
  @Test
  void coverageWhereABoundRules() {
    BudgetLine bound = line(0.02, Distribution.RECTANGULAR);
    BudgetLine step = line(0.005, Distribution.RECTANGULAR);
    Budget budget = Budget.of("mm", List.of(bound, step, step), 0);
    java.util.Random random = new java.util.Random(8);
    int inside = 0;
    int draws = 200_000;
    for (int i = 0; i < draws; i++) {
      double sum = 0.02 * even(random) + 0.005 * even(random) + 0.005 * even(random);
      inside += Math.abs(sum) <= budget.expanded() ? 1 : 0;
    }
    assertEquals(inside / (double) draws, budget.coverage(), 0.004);
    assertTrue(budget.coverage() > 0.98);
    Budget normal = Budget.of("mm", List.of(line(1, Distribution.NORMAL)), 0);
    assertEquals(0.9545, normal.coverage(), 1e-4);
  }

  private static double even(java.util.Random random) {
    return 2 * random.nextDouble() - 1;
  }

  private static BudgetLine line(double half, Distribution distribution) {
    double u = distribution == Distribution.RECTANGULAR ? half / Math.sqrt(3) : half;
    return BudgetLine.of("source", Sentence.plain("value"), "mm", distribution, u, 1, null);
  }
}
