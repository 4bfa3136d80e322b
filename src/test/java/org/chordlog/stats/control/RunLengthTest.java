package org.chordlog.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.stats.Data;
import org.chordlog.stats.control.Plotter.Place;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Average run lengths of the chart code itself, by seeded simulation. A run length is about
 * geometric, so that its mean over N runs has a standard error of ARL/√N; within 4 of these.
 */
@Tag("slow")
final class RunLengthTest {
  private static final double POINTS = 4e5;

  /** Any text, for example Montgomery, 6th ed., section 6.2 (from memory). */
  @ParameterizedTest
  @CsvSource({"0, 370.4", "0.5, 155.22", "1, 43.89", "1.5, 14.97", "2, 6.30", "3, 2.00"})
  void shewhart(double shift, double published) {
    check(published, shift, ChartKind.INDIVIDUALS, RunRules.only(RunTest.BEYOND_LIMIT));
  }

  /** Champ and Woodall 1987, Table 1 (from memory); here the last rule is 8 points on one side. */
  @ParameterizedTest
  @CsvSource({
    "1, 370.40, 43.89",
    "1+2, 225.44, 20.01",
    "1+3, 166.05, 12.66",
    "1+4, 152.73, 14.58",
    "1+2+3, 132.89, 10.95",
    "1+2+4, 122.05, 11.73",
    "1+3+4, 105.78, 10.19",
    "1+2+3+4, 91.75, 9.22"
  })
  void runTests(String rules, double steady, double shifted) {
    check(steady, 0, ChartKind.INDIVIDUALS, combined(rules));
    check(shifted, 1, ChartKind.INDIVIDUALS, combined(rules));
  }

  private static RunRules combined(String rules) {
    RunRules combined = RunRules.only();
    for (String rule : rules.split("\\+", -1)) {
      combined =
          switch (rule) {
            case "1" -> combined.with(RunTest.BEYOND_LIMIT, 1);
            case "2" -> combined.with(RunTest.NEAR_LIMIT, 2);
            case "3" -> combined.with(RunTest.OFF_CENTRE, 4);
            default -> combined.with(RunTest.SAME_SIDE, 8);
          };
    }
    return combined;
  }

  /** Montgomery, Tables 9.3 and 9.4 after Hawkins (from memory); two-sided, k = 0.5. */
  @ParameterizedTest
  @CsvSource({
    "4, 0, 168, 0.5", "4, 0.5, 26.6, 0.05", "4, 1, 8.38, 0.005", "4, 2, 3.34, 0.005",
    "5, 0, 465, 0.5", "5, 0.5, 38.0, 0.05", "5, 1, 10.4, 0.05", "5, 2, 4.01, 0.005",
    "4.77, 0, 370, 2"
  })
  void cusum(double interval, double shift, double published, double rounding) {
    ChartSettings settings =
        ChartSettings.usual().withCusum(new ChartSettings.Cusum(0.5, interval, 0));
    check(published, shift, ChartKind.CUSUM, settings, rounding);
  }

  /** Lucas and Crosier 1982 (from memory): head start of half h, k = 0.5, h = 5. */
  @ParameterizedTest
  @CsvSource({"0, 430", "1, 6.35"})
  void cusumWithHeadStart(double shift, double published) {
    ChartSettings settings = ChartSettings.usual().withCusum(new ChartSettings.Cusum(0.5, 5, 0.5));
    check(published, shift, ChartKind.CUSUM, settings, published / 1000);
  }

  /** Lucas and Saccucci 1990 (from memory), all 50 cells; two units of the last digit allowed. */
  @ParameterizedTest
  @CsvFileSource(resources = "/stats/arl-ewma.csv", numLinesToSkip = 1)
  void ewma(double lambda, double width, double shift, double published) {
    ChartSettings settings =
        ChartSettings.usual().withEwma(new ChartSettings.Ewma(lambda, width, true));
    double rounding = published >= 100 ? 0.5 : 0.1;
    check(published, shift, ChartKind.EWMA, settings, rounding);
  }

  private static void check(double published, double shift, ChartKind kind, RunRules rules) {
    check(published, shift, kind, ChartSettings.usual().withRunRules(rules), 0.005);
  }

  private static void check(
      double published, double shift, ChartKind kind, ChartSettings settings, double rounding) {
    int runs = (int) Math.max(400, Math.min(20_000, POINTS / published));
    double seen = averageRunLength(kind, settings, shift, runs);
    double error = 4 * published / Math.sqrt(runs) + rounding;
    assertEquals(published, seen, error, kind + " shift " + shift);
  }

  static double averageRunLength(ChartKind kind, ChartSettings settings, double shift, int runs) {
    StatisticsPlan plan = Data.plan(1, Limits.NONE, settings);
    Well19937c random = new Well19937c(Arrays.hashCode(new double[] {shift, runs}));
    Plotter plotter = kind.plotter(plan);
    RunHistory history = new RunHistory(settings.runRules().within(kind.tests()));
    Estimate standard = new Estimate(0, 1, Double.POSITIVE_INFINITY);
    long points = 0;
    for (int run = 0; run < runs; run++) {
      plotter.restart();
      history.restart();
      boolean quiet = true;
      while (quiet) {
        double value = random.nextGaussian() + shift;
        Point point = Point.single(new Observation(1, 1, "middle", 1, value, 0), "");
        Place place = plotter.place(point, standard);
        points++;
        quiet = place == null || history.add(points, place.z(), true).isEmpty();
      }
    }
    return points / (double) runs;
  }
}
