package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Control limits of published examples. */
final class TextbookChartsTest {
  private static final ChartSettings OPEN =
      ChartSettings.usual().withBaselinePoints(0).withRunRules(RunRules.only(RunTest.BEYOND_LIMIT));

  /**
   * Montgomery, Introduction to SQC, 6th ed., Example 6.1 (data Table 6.1; results from memory).
   */
  @Test
  void hardBakeFlowWidth() {
    JobStatistics job =
        Data.fed(
            Data.plan(5, new Limits(1.0, 2.0, null), OPEN),
            Data.subgroups(Data.rows("hard-bake-1.csv")));
    double[] means = Data.limits(job, ChartKind.MEAN);
    assertEquals(1.5056, means[1], 5e-5);
    assertEquals(1.69325, means[2], 1e-4, "printed with A2 rounded to 0.577");
    assertEquals(1.31795, means[0], 1e-4, "printed with A2 rounded to 0.577");
    double[] ranges = Data.limits(job, ChartKind.RANGE);
    assertEquals(0.32521, ranges[1], 5e-6);
    assertEquals(0.68749, ranges[2], 2e-4, "printed with D4 rounded to 2.114");
    assertEquals(0, ranges[0]);
    Summary summary = job.summary("middle", Summary.Scope.JOB);
    assertEquals(0.1398, Data.value(summary, "standardDeviationWithin"), 5e-5);
    assertEquals(1.192, Data.value(summary, "Cp"), 5e-4);
  }

  /** The same example's second phase: with frozen limits sample 43 is the first one above. */
  @Test
  void hardBakeSecondPhaseSignalsAtSample43() {
    JobStatistics job =
        Data.fed(
            Data.plan(5, Limits.NONE, OPEN.withBaselinePoints(25)),
            Data.subgroups(Data.rows("hard-bake-1.csv")));
    Data.feed(job, Data.subgroups(Data.rows("hard-bake-2.csv")));
    ChartSnapshot means = Data.chart(job, ChartKind.MEAN);
    long first =
        means.points().stream()
            .filter(point -> !point.signals().isEmpty())
            .findFirst()
            .orElseThrow()
            .number();
    assertEquals(43, first);
    assertTrue(means.limits().stream().allMatch(LimitSpan::frozen));
  }
}
