package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.apache.commons.math3.random.Well19937c;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.RunRules;
import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.StatisticsPlan;
import org.junit.jupiter.api.Test;

/** Limits from all points, also above the 500 that are judged again while limits follow them. */
final class BaselineOfAllTest {
  /** Counted by hand: every point beyond the limits that are printed signals, and no other. */
  @Test
  void everyPointIsJudgedByTheLimitsOfAll() {
    double[] values = new double[4000];
    Well19937c random = new Well19937c(4);
    for (int i = 0; i < values.length; i++) {
      values[i] = (i < 2000 ? 1000 : 1010) + 2 * random.nextGaussian();
    }
    ChartSettings settings =
        ChartSettings.usual()
            .withBaselinePoints(0)
            .withRunRules(RunRules.only(RunTest.BEYOND_LIMIT));
    StatisticsPlan plan = Data.plan(1, Limits.NONE, settings);
    JobStatistics judged = JobStatistics.judgedBy(Data.fed(plan, values));
    Data.feed(judged, values);
    ChartSnapshot chart = Data.chart(judged, ChartKind.INDIVIDUALS);
    assertEquals(1, chart.limits().size());
    LimitSpan span = chart.limits().get(0);
    assertFalse(span.frozen());
    assertEquals(
        beyond(values, Data.limits(judged, ChartKind.INDIVIDUALS)), chart.signallingCount());
  }

  private static long beyond(double[] values, double[] limits) {
    long count = 0;
    for (double value : values) {
      count += value < limits[0] || value > limits[2] ? 1 : 0;
    }
    return count;
  }
}
