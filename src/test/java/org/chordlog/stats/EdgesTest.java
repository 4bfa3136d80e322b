package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.capability.Caution.Kind;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.math.Factors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Few readings, no variation, missing limits. */
final class EdgesTest {
  private static final Limits BOTH = new Limits(1.0, 9.0, 5.0);

  private static JobStatistics job(int size, Limits limits, double... values) {
    return Data.fed(Data.plan(size, limits, ChartSettings.usual()), values);
  }

  private static Summary summary(JobStatistics job) {
    return job.summary("middle", Scope.JOB);
  }

  private static List<Kind> cautions(JobStatistics job) {
    return summary(job).cautions().stream().map(Caution::kind).toList();
  }

  @Test
  void noReadings() {
    JobStatistics job = job(1, BOTH);
    assertEquals(0, summary(job).count());
    assertTrue(cautions(job).contains(Kind.NO_DATA));
    assertTrue(Data.chart(job, ChartKind.INDIVIDUALS).points().isEmpty());
  }

  @Test
  void oneReadingHasAMeanAndNothingElse() {
    JobStatistics job = job(1, BOTH, 5);
    assertEquals(5, Data.value(summary(job), "mean"));
    assertTrue(Double.isNaN(Data.value(summary(job), "standardDeviationOverall")));
    assertFalse(summary(job).figure("Ppk").isPresent());
    assertTrue(cautions(job).contains(Kind.TOO_FEW));
    ChartSnapshot chart = Data.chart(job, ChartKind.INDIVIDUALS);
    assertEquals(5, chart.points().get(0).value());
    assertTrue(Double.isNaN(Data.limits(job, ChartKind.INDIVIDUALS)[2]));
  }

  @Test
  void twoReadingsGiveAFirstEstimate() {
    JobStatistics job = job(1, BOTH, 4, 6);
    assertEquals(Math.sqrt(2), Data.value(summary(job), "standardDeviationOverall"), 1e-12);
    assertEquals(
        2 / Factors.of(2).d2(), Data.value(summary(job), "standardDeviationWithin"), 1e-12);
    assertTrue(Data.value(summary(job), "Ppk") > 0);
  }

  @Test
  void allEqualHasNoIndices() {
    JobStatistics job = job(1, BOTH, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5);
    assertTrue(cautions(job).contains(Kind.NO_VARIATION));
    assertFalse(summary(job).figure("Cpk").isPresent());
    assertEquals(0, Data.firstSignal(Data.chart(job, ChartKind.INDIVIDUALS)));
    assertEquals(0, Data.value(summary(job), "standardDeviationOverall"));
  }

  /** Whatever the value: its weighted mean with itself is itself, to the last digit. */
  @ParameterizedTest
  @ValueSource(ints = {1, 5})
  void equalReadingsSignalOnNoChart(int size) {
    double[] values = new double[60];
    Arrays.fill(values, 1801.0748853211007);
    JobStatistics job = job(size, Limits.NONE, values);
    for (ChartKind kind : job.kinds("middle")) {
      assertEquals(0, Data.firstSignal(Data.chart(job, kind)), kind.name());
    }
  }

  @ParameterizedTest
  @CsvSource({"skewness, 3", "kurtosis, 4", "autocorrelation, 3"})
  void aShapeThatCantBeToldSaysWhatItNeeds(String name, int least) {
    for (double[] values : new double[][] {{4, 6}, {5, 5, 5, 5, 5}}) {
      Figure figure =
          summary(job(1, Limits.NONE, values)).figures().stream()
              .filter(each -> each.name().equals(name))
              .findFirst()
              .orElseThrow();
      assertNull(figure.value());
      assertEquals("needs " + least + " readings that are not all equal", figure.method());
    }
  }

  @Test
  void aStepAfterNoVariationSignals() {
    double[] values = new double[27];
    values[26] = 0.001;
    JobStatistics job = job(1, Limits.NONE, values);
    assertEquals(27, Data.firstSignal(Data.chart(job, ChartKind.INDIVIDUALS)));
  }

  @Test
  void noLimits() {
    JobStatistics job = job(1, Limits.NONE, 4, 6, 5);
    assertTrue(cautions(job).contains(Kind.NO_LIMITS));
    assertFalse(summary(job).figure("Ppk").isPresent());
  }

  @Test
  void oneLimit() {
    JobStatistics job = job(1, new Limits(null, 9.0, null), 4, 6, 5);
    assertTrue(cautions(job).contains(Kind.ONE_LIMIT));
    assertFalse(summary(job).figure("Pp").isPresent());
    assertEquals(Data.value(summary(job), "PpkUpper"), Data.value(summary(job), "Ppk"));
  }

  @Test
  void reversedLimitsAndNoNumbersAreRefused() {
    assertThrows(BadInput.class, () -> new Limits(9.0, 1.0, null));
    assertThrows(BadInput.class, () -> new Limits(Double.NaN, null, null));
    assertThrows(BadInput.class, () -> new Observation(1, 1, "middle", 1, Double.NaN, 0));
  }

  @Test
  void incompleteSubgroupWaits() {
    JobStatistics job = job(3, BOTH, 4, 6, 5, 5);
    assertEquals(1, Data.chart(job, ChartKind.MEAN).points().size());
    assertTrue(cautions(job).contains(Kind.SUBGROUP_INCOMPLETE));
    assertEquals(4, summary(job).count());
  }

  @Test
  void coarseStepsAreSeen() {
    JobStatistics job = job(1, BOTH, 5, 5, 5, 5, 6, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 6, 5, 5);
    assertTrue(cautions(job).contains(Kind.RESOLUTION_VISIBLE));
  }
}
