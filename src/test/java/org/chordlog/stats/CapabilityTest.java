package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.stats.capability.Capability;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.capability.ExactInterval;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.NoncentralT;
import org.chordlog.stats.math.Normal;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Capability indices, their intervals and what goes with them. */
final class CapabilityTest {
  private static Capability of(double lower, double upper, double mean, double sigma, long n) {
    return new Capability(new Limits(lower, upper, null), new Estimate(mean, sigma, n - 1.0), n);
  }

  private static Interval given(@Nullable Interval interval) {
    assertNotNull(interval);
    return interval;
  }

  /**
   * e-Handbook 6.1.6 (memory); Montgomery and Runger, Example 15-3, and Miller and Freund, Example
   * 15.2 (data read, results from memory).
   */
  @ParameterizedTest
  @CsvSource({
    "8, 20, 16, 2, 1.0, 0.6667, 5e-5",
    "90, 110, 107, 1.5, 2.22, 0.67, 5e-3",
    "10.98, 11.01, 10.991, 0.0035, 1.43, 1.05, 5e-3"
  })
  void indices(
      double lower, double upper, double mean, double sigma, double cp, double cpk, double within) {
    Capability capability = of(lower, upper, mean, sigma, 20);
    assertEquals(cp, given(capability.potential()).value(), within);
    assertEquals(cpk, given(capability.nearer()).value(), within);
  }

  /** Montgomery, 6th ed., Example 8.4 (memory): s = 1.75, n = 20, limits 38 and 62. */
  @Test
  void chiSquareInterval() {
    Interval cp = given(of(38, 62, 50, 1.75, 20).potential());
    assertEquals(2.29, cp.value(), 5e-3);
    assertEquals(1.57, cp.lower(), 6e-3, "printed from the rounded index");
    assertEquals(3.01, cp.upper(), 6e-3, "printed from the rounded index");
  }

  /** As of readings that are all but equal, a kilometre off their target. */
  @Test
  void anIntervalOfEndlessFreedomIsFoundAndGoesOnFromThatOfLess() {
    for (double freedom : new double[] {1.001e7, 1e10, 1e15, 1e300}) {
      Interval index = Capability.chiSquare(2, freedom);
      assertTrue(index.lower() <= 2 && index.upper() >= 2, index::toString);
    }
    assertEquals(
        Capability.chiSquare(2, 0.999e7).lower(), Capability.chiSquare(2, 1.001e7).lower(), 1e-6);
    assertEquals(
        Capability.chiSquare(2, 0.999e7).upper(), Capability.chiSquare(2, 1.001e7).upper(), 1e-6);
  }

  /** Bissell's and the chi-square formula worked independently (no publication). */
  @Test
  void workedIntervals() {
    double z = Normal.quantile(0.975);
    Interval small = Capability.bissell(1.33, 20, 19, z);
    assertEquals(0.8826, small.lower(), 5e-5);
    assertEquals(1.7774, small.upper(), 5e-5);
    Interval cpk = Capability.bissell(1.33, 50, 49, z);
    assertEquals(1.05094, cpk.lower(), 5e-6);
    assertEquals(1.60906, cpk.upper(), 5e-6);
    assertEquals(1.09580, Capability.bissell(1.33, 50, 49, Normal.quantile(0.95)).lower(), 5e-6);
    Interval cp = Capability.chiSquare(1.33, 49);
    assertEquals(1.06730, cp.lower(), 5e-6);
    assertEquals(1.59218, cp.upper(), 5e-6);
  }

  /**
   * Exact limits cover the truth (the distribution at the true index is within its tails) at the
   * stated rate: 1,500 seeded samples of 15, one-sided limit, true index 1; binomial standard error
   * 0.56 %.
   */
  @Test
  void exactIntervalCovers() {
    Well19937c random = new Well19937c(7);
    int covered = 0;
    int runs = 1500;
    for (int run = 0; run < runs; run++) {
      Moments sample = new Moments();
      for (int i = 0; i < 15; i++) {
        sample.add(random.nextGaussian());
      }
      double t = Math.sqrt(15) * (3 - sample.mean()) / sample.deviation();
      double below = NoncentralT.below(t, 14, 3 * Math.sqrt(15));
      covered += below >= 0.025 && below <= 0.975 ? 1 : 0;
    }
    assertEquals(0.95, covered / (double) runs, 4 * 0.0056);
  }

  /** The limits are where the tails of the noncentral t are 2.5 %. */
  @Test
  void exactLimitsInvertTheDistribution() {
    Interval exact = ExactInterval.of(1.33, 20);
    double scale = 3 * Math.sqrt(20);
    assertEquals(0.975, NoncentralT.below(1.33 * scale, 19, exact.lower() * scale), 1e-6);
    assertEquals(0.025, NoncentralT.below(1.33 * scale, 19, exact.upper() * scale), 1e-6);
  }

  /** Central case: t with 9 degrees of freedom, 97.5 % at 2.262 (t-table). */
  @Test
  void noncentralTWithoutNoncentralityIsStudent() {
    assertEquals(0.975, NoncentralT.below(2.262157, 9, 0), 1e-7);
    assertEquals(0.5, NoncentralT.below(0, 3, 0), 1e-7);
  }

  @Test
  void expectedAndObservedPartsPerMillion() {
    JobStatistics job = filled(new Limits(-2.0, 2.0, 0.0), 2000, 11);
    Summary summary = job.summary("middle", Scope.JOB);
    double sigma = Data.value(summary, "standardDeviationOverall");
    double mean = Data.value(summary, "mean");
    assertEquals(
        1e6 * Normal.below((-2 - mean) / sigma),
        Data.value(summary, "expectedBelowPpmOverall"),
        1e-6);
    assertEquals(22750, Data.value(summary, "observedBelowPpm"), 10_000);
    double ppk = Data.value(summary, "Ppk");
    assertEquals(ppk, Data.value(summary, "PpkExact"), 1e-12);
    assertTrue(Data.value(summary, "Cpm") <= Data.value(summary, "Pp"));
  }

  /** σ² = σ_pieces² + u²: with a gauge of known noise the indices without it come out right. */
  @Test
  void gaugeTakenOut() {
    Well19937c random = new Well19937c(3);
    JobStatistics job =
        new JobStatistics(Data.plan(1, new Limits(-4.0, 4.0, null), ChartSettings.usual()));
    for (int id = 1; id <= 20_000; id++) {
      double value = random.nextGaussian() + 0.75 * random.nextGaussian();
      job.add(new Observation(id, id, "middle", id, value, 0.75));
    }
    Summary summary = job.summary("middle", Scope.JOB);
    assertEquals(4.0 / 3 / 1.25, Data.value(summary, "Pp"), 0.02);
    assertEquals(4.0 / 3, Data.value(summary, "PpWithoutGauge"), 0.03);
    assertTrue(kinds(summary).contains(Caution.Kind.GAUGE_TOO_COARSE));
  }

  private static JobStatistics filled(Limits limits, int count, int seed) {
    Well19937c random = new Well19937c(seed);
    double[] values = new double[count];
    Arrays.setAll(values, i -> random.nextGaussian());
    return Data.fed(Data.plan(1, limits, ChartSettings.usual()), values);
  }

  private static List<Caution.Kind> kinds(Summary summary) {
    return summary.cautions().stream().map(Caution::kind).toList();
  }

  /**
   * Coverage at a stated 95 %: normal values; the percentile bootstrap before held 88 and 92.5 %.
   */
  @ParameterizedTest
  @CsvSource({"25, 300", "100, 200"})
  void theBootstrapHoldsWhatItPromises(int n, int series) {
    int inside = 0;
    int unsafe = 0;
    for (int seed = 1; seed <= series; seed++) {
      Well19937c random = new Well19937c(seed);
      double[] values = new double[n];
      Arrays.setAll(values, i -> random.nextGaussian());
      StatisticsPlan plan = Data.plan(1, new Limits(-4.0, 3.5, null), ChartSettings.usual());
      Figure figure =
          Data.fed(plan, values).summary("middle", Scope.JOB).figure("PpkBootstrap").orElse(null);
      double truth = 3.5 / 3;
      if (figure == null) {
        inside++;
        continue;
      }
      double lower = given(figure.lower());
      double upper = given(figure.upper());
      inside += lower <= truth && truth <= upper ? 1 : 0;
      unsafe += truth < lower ? 1 : 0;
    }
    double error = Math.sqrt(0.95 * 0.05 / series);
    assertTrue(inside / (double) series >= 0.95 - 3 * error, inside + " of " + series);
    assertTrue(unsafe / (double) series <= 0.025 + 3 * error, unsafe + " unsafe");
  }

  private static double given(@Nullable Double limit) {
    assertNotNull(limit);
    return limit;
  }

  /** Readings that wait for a full subgroup count in the mean; so they do in Cpk. */
  @Test
  void cpkIsThatOfTheMeanShown() {
    StatisticsPlan plan = Data.plan(10, new Limits(990.0, null, null), ChartSettings.usual());
    JobStatistics job = new JobStatistics(plan);
    Well19937c random = new Well19937c(5);
    double[] values = new double[37];
    Arrays.setAll(values, i -> 1000 + random.nextGaussian() + (i >= 30 ? 3 : 0));
    Data.feed(job, values);
    Summary summary = job.summary("middle", Scope.JOB);
    double sigma = Data.value(summary, "standardDeviationWithin");
    double cpk = (Data.value(summary, "mean") - 990) / (3 * sigma);
    assertEquals(cpk, Data.value(summary, "Cpk"), 1e-12);
  }

  /** Six standard deviations of 0.75 are 45 % of a tolerance of 10, and the bias 10 %. */
  @Test
  void aCoarseGaugeAndItsBiasAreSaidWithEveryIndex() {
    StatisticsPlan plan = Data.plan(1, new Limits(995.0, 1005.0, null), ChartSettings.usual());
    JobStatistics job = new JobStatistics(plan);
    Well19937c random = new Well19937c(6);
    for (int id = 1; id <= 60; id++) {
      double value = 1000 + random.nextGaussian();
      job.add(new Observation(id, id, "middle", id, value, 0.75, -1));
    }
    Summary summary = job.summary("middle", Scope.JOB);
    assertEquals(45, Data.value(summary, "gaugeShare"), 1e-9);
    assertEquals(-1, Data.value(summary, "gaugeBias"), 1e-9);
    for (String index : List.of("Cp", "Cpk", "Pp", "Ppk")) {
      String method = summary.figure(index).orElseThrow().method();
      assertTrue(method.contains("gauge is too coarse"), method);
    }
    List<Caution.Kind> kinds = summary.cautions().stream().map(Caution::kind).toList();
    assertTrue(kinds.contains(Caution.Kind.GAUGE_TOO_COARSE), kinds.toString());
    assertTrue(kinds.contains(Caution.Kind.GAUGE_BIAS), kinds.toString());
  }
}
