package org.chordlog.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.Data;
import org.chordlog.stats.JobStatistics;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each test of Nelson (1984) on points in sigma: where it fires first, and on which side. */
final class RunTestTest {
  @ParameterizedTest
  @CsvSource({
    "1, 0 1 3.01, 3, ABOVE",
    "1, 0 -3.01, 2, BELOW",
    "1, 3 -3 3, 0, ",
    "2, 1 1 1 1 1 1 1 1 1, 9, ABOVE",
    "2, -.1 -.1 -.1 -.1 -.1 -.1 -.1 -.1 -.1, 9, BELOW",
    "2, 1 1 1 1 1 1 1 1 0 1, 0, ",
    "3, -1 -.5 0 .5 1 1.5, 6, ABOVE",
    "3, 1 .9 .8 .7 .6 .5, 6, BELOW",
    "3, 1 2 2 2.1 2.2 2.3, 0, ",
    "4, 0 1 0 1 0 1 0 1 0 1 0 1 0 1, 14, BOTH",
    "4, 0 1 0 1 0 1 0 1 1 0 1 0 1 0, 0, ",
    "5, 2.1 0 2.1, 3, ABOVE",
    "5, 2.1 2.1, 2, ABOVE",
    "5, 2.1 0 0 2.1, 0, ",
    "5, 2.1 -2.1 0, 0, ",
    "5, -2.5 -2.5, 2, BELOW",
    "6, 1.1 1.1 0 1.1 1.1, 5, ABOVE",
    "6, 1.1 1.1 1.1 1.1, 4, ABOVE",
    "6, 1.1 1.1 -1.1 0 1.1 1.1, 0, ",
    "6, -1.1 -1.1 2 -1.1 -1.1, 5, BELOW",
    "7, .1 -.1 .5 -.5 .9 -.9 .1 .1 .1 .1 .1 .1 .1 .1 .1, 15, BOTH",
    "7, .1 -.1 .5 -.5 .9 -.9 .1 .1 .1 .1 .1 .1 .1 1 .1, 0, ",
    "8, 1.1 -1.1 1.1 1.2 -1.3 -1.1 1.5 1.1, 8, BOTH",
    "8, 1.1 1.1 1.1 1.2 1.3 1.1 1.5 1.1, 0, "
  })
  void firesFirst(int test, String points, long at, Signal.Side side) {
    ChartPoint fired = first(RunRules.only(RunTest.numbered(test)), points);
    assertEquals(at, fired == null ? 0 : fired.number());
    if (fired != null) {
      assertEquals(side, fired.signals().get(0).side());
      assertEquals(test, fired.signals().get(0).test());
      List<Long> seen = fired.signals().get(0).points();
      assertEquals(at, seen.get(seen.size() - 1));
    }
  }

  @Test
  void countsAreAdjustable() {
    RunRules eight = RunRules.only(RunTest.SAME_SIDE).with(RunTest.SAME_SIDE, 8);
    assertEquals(8, number(first(eight, "1 1 1 1 1 1 1 1")));
    assertEquals(0, number(first(eight.without(RunTest.SAME_SIDE), "1 1 1 1 1 1 1 1 9")));
    assertThrows(BadInput.class, () -> eight.with(RunTest.NEAR_LIMIT, 30));
    assertThrows(BadInput.class, () -> eight.with(RunTest.TREND, 2));
  }

  @Test
  void wordsNameTheCounts() {
    assertEquals("4 of 5 points beyond 1 sigma on one side", RunTest.OFF_CENTRE.describe(4));
    assertEquals(
        "1 point beyond 3 sigma", RunTest.BEYOND_LIMIT.describe(RunTest.BEYOND_LIMIT.usualCount()));
  }

  private static long number(@Nullable ChartPoint point) {
    return point == null ? 0 : point.number();
  }

  private static @Nullable ChartPoint first(RunRules rules, String points) {
    ChartSettings settings =
        ChartSettings.usual().withRunRules(rules).withStandard(new ChartSettings.Standard(0, 1));
    double[] values = Arrays.stream(points.split(" ")).mapToDouble(Double::parseDouble).toArray();
    JobStatistics job = Data.fed(Data.plan(1, Limits.NONE, settings), values);
    return Data.chart(job, ChartKind.INDIVIDUALS).points().stream()
        .filter(point -> !point.signals().isEmpty())
        .findFirst()
        .orElse(null);
  }

  /** Checkpoints of the statistics hold the plan as text: another process must write it alike. */
  @Test
  void aPlanReadsAlikeInEveryProcess() {
    assertEquals(
        "RunRules[counts={BEYOND_LIMIT=1, SAME_SIDE=9, NEAR_LIMIT=2, OFF_CENTRE=4}]",
        ChartSettings.usual().runRules().toString());
  }
}
