package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Objects;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.math.JohnsonFit;
import org.chordlog.stats.math.Normal;
import org.chordlog.verdict.CapabilityVerdict;
import org.chordlog.verdict.Statement;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Indices of readings that are not normal, by a fitted Johnson distribution. */
final class PercentileIndexTest {
  @Test
  void skewedDataGetPercentileIndices() {
    Well19937c random = new Well19937c(5);
    JobStatistics job =
        new JobStatistics(Data.plan(1, new Limits(null, 12.0, null), ChartSettings.usual()));
    for (int id = 1; id <= 1500; id++) {
      double value = Math.exp(0.5 * random.nextGaussian());
      job.add(new Observation(id, id, "middle", id, value, 0));
    }
    Summary summary = job.summary("middle", Scope.JOB);
    assertTrue(
        summary.cautions().stream().anyMatch(each -> each.kind() == Caution.Kind.NOT_NORMAL));
    assertEquals(Math.exp(1.5), Data.value(summary, "percentile99.865"), 0.6);
    assertEquals(1, Data.value(summary, "percentile50"), 0.03);
    Figure index = summary.figure("PpkPercentile").orElseThrow();
    assertTrue(index.method().contains("Johnson"));
    double trueIndex = (12 - 1) / (Math.exp(1.5) - 1);
    assertTrue(
        assertPresent(index.lower()) < trueIndex && trueIndex < assertPresent(index.upper()));
  }

  /** The whole interval decides, so that a job that is not normal can be shown to be capable. */
  @Test
  void anIndexByPercentilesDecidesByItsInterval() {
    double[] values = new double[400];
    Well19937c random = new Well19937c(6);
    Arrays.setAll(values, i -> Math.exp(0.5 * random.nextGaussian()));
    assertEquals("Capable", capability(values, 30).word());
    assertEquals("Not capable", capability(values, 2.5).word());
    assertEquals("Not proven", capability(values, 5.5).word());
  }

  /** Half of the readings beyond a limit are not to be called "not proven" or "unknown". */
  @Test
  void whatIsSurelySeenBeyondALimitNeedsNeitherShapeNorControl() {
    double[] values = new double[14];
    Arrays.setAll(values, i -> i < 7 ? 10 + 0.1 * i : 14 + 0.1 * i);
    for (boolean inControl : new boolean[] {true, false}) {
      Statement half = capability(values, 12, inControl);
      assertEquals("Not capable", half.word());
      assertTrue(half.reason().toString().startsWith("7 of 14 readings are above the USL;"));
      assertEquals("Not capable", capability(values, 15.15, inControl).word(), "2 of 14");
      assertEquals("Capability unknown", capability(values, 15.25, inControl).word(), "1 of 14");
    }
  }

  /** A coarse gauge: readings on few steps, which no curve fits. */
  @Test
  void percentileIndicesAreNamedOnlyWhereThereAreSome() {
    double[] values = new double[60];
    Arrays.setAll(values, i -> i < 11 ? 9 : i < 41 ? 10 : i < 52 ? 11 : 12);
    JobStatistics job =
        Data.fed(Data.plan(1, new Limits(0.0, 20.0, null), ChartSettings.usual()), values);
    Summary summary = job.summary("middle", Scope.JOB);
    assertTrue(summary.figure("PpkPercentile").isEmpty());
    String said =
        summary.cautions().stream()
            .filter(each -> each.kind() == Caution.Kind.NOT_NORMAL)
            .findFirst()
            .orElseThrow()
            .text()
            .toString();
    assertTrue(said.endsWith("no other shape fits them."), said);
  }

  private static Statement capability(double[] values, double upperLimit) {
    return capability(values, upperLimit, true);
  }

  private static Statement capability(double[] values, double upperLimit, boolean inControl) {
    Limits limits = new Limits(null, upperLimit, null);
    JobStatistics job = Data.fed(Data.plan(1, limits, ChartSettings.usual()), values);
    return new CapabilityVerdict(job.summary("middle", Scope.JOB), inControl).statement();
  }

  private static double assertPresent(@Nullable Double value) {
    return Objects.requireNonNull(value);
  }

  /** The fit passes through the four percentiles it is made from, for each family. */
  @ParameterizedTest
  @CsvSource({"SU", "SB", "SL"})
  void johnsonPassesThroughItsPercentiles(String family) {
    double[] values = new double[2001];
    for (int i = 0; i < values.length; i++) {
      double z = Normal.quantile((i + 0.5) / values.length);
      values[i] =
          switch (family) {
            case "SU" -> 5 + 2 * Math.sinh((z - 0.3) / 1.5);
            case "SB" -> 5 + 2 / (1 + Math.exp(-(z - 0.3) / 1.2));
            default -> 5 + Math.exp(z / 2);
          };
    }
    JohnsonFit fit = JohnsonFit.of(values);
    assertNotNull(fit);
    assertTrue(fit.family().contains(family), fit.family());
    for (int i = -3; i <= 3; i += 2) {
      double z = 0.524 * i;
      double at = values[(int) Math.round(Normal.below(z) * values.length - 0.5)];
      assertEquals(at, fit.quantile(z), 0.01);
      assertEquals(Normal.below(z), fit.below(at), 0.003);
    }
  }
}
