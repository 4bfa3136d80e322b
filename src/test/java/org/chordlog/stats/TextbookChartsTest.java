package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.RunRules;
import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.Spread;
import org.chordlog.stats.math.Factors;
import org.junit.jupiter.api.Test;

/** Control limits of published examples; those of moving sums: TextbookSumsTest. */
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
    Summary summary = job.summary("middle", Scope.JOB);
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
    assertEquals(43, Data.firstSignal(means));
    assertTrue(means.limits().stream().allMatch(LimitSpan::frozen));
  }

  /** Montgomery, 6th ed., Example 6.3, Table 6.3 (data and results from memory). */
  @Test
  void pistonRings() {
    JobStatistics job =
        Data.fed(
            Data.plan(5, Limits.NONE, OPEN.withSpread(Spread.STANDARD_DEVIATION)),
            Data.subgroups(Data.rows("piston-rings.csv")));
    double[] means = Data.limits(job, ChartKind.MEAN);
    assertEquals(74.001, means[1], 5e-4);
    assertEquals(74.014, means[2], 1e-3, "printed from the rounded mean");
    assertEquals(73.988, means[0], 1e-3);
    double[] deviations = Data.limits(job, ChartKind.STANDARD_DEVIATION);
    assertEquals(0.0094, deviations[1], 5e-5);
    assertEquals(0.0196, deviations[2], 5e-5);
    assertEquals(0.023, Data.limits(job, ChartKind.RANGE)[1], 5e-4);
  }

  /** Ishikawa, Guide to Quality Control (1982), p. 66 (data read, results from memory). */
  @Test
  void ishikawa() {
    JobStatistics job =
        Data.fed(Data.plan(5, Limits.NONE, OPEN), Data.subgroups(Data.rows("ishikawa.csv")));
    double[] means = Data.limits(job, ChartKind.MEAN);
    assertEquals(12.940, means[1], 5e-4);
    assertEquals(13.719, means[2], 1e-3, "printed with A2 rounded to 0.577");
    assertEquals(12.161, means[0], 1e-3);
    double[] ranges = Data.limits(job, ChartKind.RANGE);
    assertEquals(1.35, ranges[1], 5e-3);
    assertEquals(2.86, ranges[2], 5e-3);
  }

  /**
   * NIST/SEMATECH e-Handbook 6.3.2.2, flow rates (data read, limits from memory); the limits are
   * printed with d2 = 1.128, which shifts them by 0.0017.
   */
  @Test
  void individualsOfTheHandbook() {
    double[] flow = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
    JobStatistics job = Data.fed(Data.plan(1, Limits.NONE, OPEN), flow);
    double[] limits = Data.limits(job, ChartKind.INDIVIDUALS);
    double rounded = Factors.of(2).d2() / 1.128;
    assertEquals(50.81, limits[1], 1e-10);
    assertEquals(55.8041, limits[1] + (limits[2] - limits[1]) * rounded, 5e-5);
    assertEquals(45.8159, limits[1] + (limits[0] - limits[1]) * rounded, 5e-5);
    assertEquals(1.8778, Data.limits(job, ChartKind.MOVING_RANGE)[1], 5e-5);
  }

  /** Montgomery, 6th ed., Example 6.5, loan-processing cost (data and results from memory). */
  @Test
  void loanCost() {
    double[] cost = {
      310, 288, 297, 298, 307, 303, 294, 297, 308, 306, 294, 299, 297, 299, 314, 295, 293, 306, 301,
      304
    };
    JobStatistics job = Data.fed(Data.plan(1, Limits.NONE, OPEN), cost);
    double[] limits = Data.limits(job, ChartKind.INDIVIDUALS);
    assertEquals(300.5, limits[1], 1e-10);
    assertEquals(321.22, limits[2], 1.1e-2, "printed with d2 = 1.128");
    assertEquals(279.78, limits[0], 1.1e-2, "printed with d2 = 1.128");
    double[] ranges = Data.limits(job, ChartKind.MOVING_RANGE);
    assertEquals(7.79, ranges[1], 5e-3);
    assertEquals(25.45, ranges[2], 6e-3, "printed with 3.267");
  }

  /** Five values for each mean and range. */
  private static double[] spread(double[] means, double[] ranges) {
    double[] values = new double[5 * means.length];
    for (int i = 0; i < means.length; i++) {
      Arrays.fill(values, 5 * i, 5 * i + 5, means[i]);
      values[5 * i] -= ranges[i] / 2;
      values[5 * i + 4] += ranges[i] / 2;
    }
    return values;
  }

  /** Sharma, A Textbook of Production Engineering, chapter 21 (printed outputs read). */
  @Test
  void sharma() {
    double[] means = {
      11.274, 11.246, 11.204, 11.294, 11.252, 11.238, 11.230, 11.276, 11.208, 11.266
    };
    double[] ranges = {0.15, 0.20, 0.33, 0.46, 0.10, 0.15, 0.20, 0.23, 0.50, 0.30};
    JobStatistics job = Data.fed(Data.plan(5, Limits.NONE, OPEN), spread(means, ranges));
    assertEquals(11.40, Data.limits(job, ChartKind.MEAN)[2], 5e-3);
    assertEquals(11.10, Data.limits(job, ChartKind.MEAN)[0], 5e-3);
    assertEquals(0.554, Data.limits(job, ChartKind.RANGE)[2], 5e-4);
  }

  private static final double[] SHARMA_MEANS = {
    3290, 3180, 3350, 3470, 3080, 3240, 3260, 3310, 3640, 4110, 3220, 3590, 4270, 4040, 3580, 3500,
    3570, 3560, 2740, 3200
  };
  private static final double[] SHARMA_RANGES = {
    560, 410, 200, 300, 90, 650, 890, 410, 1120, 520, 580, 670, 480, 250, 170, 670, 440, 660, 560,
    590
  };

  private static JobStatistics sharmaWithout(int... samples) {
    JobStatistics job = new JobStatistics(Data.plan(5, Limits.NONE, OPEN));
    for (int sample : samples) {
      for (int id = 5 * sample - 4; id <= 5 * sample; id++) {
        job.exclude(id, "assignable cause");
      }
    }
    Data.feed(job, spread(SHARMA_MEANS, SHARMA_RANGES));
    return job;
  }

  /**
   * The second set (read), printed with A2 = 0.577 and D4 = 2.115; its revised limits leave out
   * samples 5, 10, 13, 14, 19 for the mean and sample 9 for the range.
   */
  @Test
  void sharmaSecondSetAndItsRevision() {
    JobStatistics all = sharmaWithout();
    assertEquals(3754.85, Data.limits(all, ChartKind.MEAN)[2], 0.1);
    assertEquals(3165.15, Data.limits(all, ChartKind.MEAN)[0], 0.1);
    assertEquals(1080.765, Data.limits(all, ChartKind.RANGE)[2], 0.5);
    double[] ranged = Data.limits(sharmaWithout(9), ChartKind.MEAN);
    double centre = Data.limits(sharmaWithout(5, 10, 13, 14, 19), ChartKind.MEAN)[1];
    assertEquals(3673.686, centre + ranged[2] - ranged[1], 0.1);
    assertEquals(1012.974, Data.limits(sharmaWithout(9), ChartKind.RANGE)[2], 0.5);
  }

  /**
   * Kalpakjian and Schmid, Manufacturing Engineering and Technology, Example 36.2 (totals read,
   * results from memory): ten samples of five, sum of means 44.296 in, of ranges 1.03 in.
   */
  @Test
  void kalpakjian() {
    double[] means = new double[10];
    double[] ranges = new double[10];
    Arrays.fill(means, 4.4296);
    Arrays.fill(ranges, 0.103);
    JobStatistics job = Data.fed(Data.plan(5, Limits.NONE, OPEN), spread(means, ranges));
    assertEquals(4.489, Data.limits(job, ChartKind.MEAN)[2], 5e-4);
    assertEquals(4.370, Data.limits(job, ChartKind.MEAN)[0], 5e-4);
    assertEquals(0.218, Data.limits(job, ChartKind.RANGE)[2], 5e-4);
    Summary summary = job.summary("middle", Scope.JOB);
    assertEquals(0.044, Data.value(summary, "standardDeviationWithin"), 5e-4);
  }
}
