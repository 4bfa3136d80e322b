package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Factors;
import org.chordlog.stats.math.RangeIntegrals;
import org.chordlog.study.StudySettings.Constants;
import org.chordlog.study.StudySettings.Evaluation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Averages and ranges: automotive reference manual on measurement systems analysis, 4th ed., Figure
 * III-B 15/16 (from memory). The manual rounds between steps: 1e-4 absolute, 0.02 on percentages.
 */
final class RangeStudyTest {
  private static final List<StudyReading> READINGS =
      StudyData.readings("parts-appraisers-trials.csv");
  private static final StudyResult RESULT = RangeStudy.of(READINGS, StudySettings.usual());

  @ParameterizedTest
  @CsvSource({
    "meanRange, 0.3417, 5e-5",
    "EV, 0.20188, 1e-4",
    "AV, 0.22963, 1e-4",
    "GRR, 0.30575, 1e-4",
    "PV, 1.10456, 2e-4",
    "TV, 1.14610, 2e-4",
    "percentEV, 17.62, 0.02",
    "percentAV, 20.04, 0.02",
    "percentGRR, 26.68, 0.02",
    "percentPV, 96.38, 0.02",
    "ndcUnrounded, 5.094, 2e-3",
    "ndc, 5, 0"
  })
  void printedFigures(String name, double printed, double within) {
    assertEquals(printed, StudyData.value(RESULT, name), within);
  }

  /** UCL of ranges 2.58·0.3417 = 0.8816: B's range on piece 4, 1.02, is above. */
  @Test
  void aRangeOutOfControlIsNamed() {
    assertEquals(
        0.8816,
        Factors.of(3).d4Limit() * StudyData.value(RESULT, "meanRange"),
        2e-3,
        "printed with D4 rounded to 2.58");
    List<String> named = RESULT.cautions().stream().filter(c -> c.startsWith("Range of")).toList();
    assertEquals(1, named.size());
    assertTrue(named.get(0).contains("operator B on piece 4"), named.get(0));
  }

  /** K factors of the same manual, appendix C (from memory). */
  @ParameterizedTest
  @CsvSource({
    "K1, 2, 0.8862",
    "K1, 3, 0.5908",
    "K2, 2, 0.7071",
    "K2, 3, 0.5231",
    "K3, 4, 0.4467",
    "K3, 5, 0.4030",
    "K3, 6, 0.3742",
    "K3, 7, 0.3534",
    "K3, 8, 0.3375",
    "K3, 9, 0.3249",
    "K3, 10, 0.3146"
  })
  void factorsByIntegration(String factor, int n, double printed) {
    double own = factor.equals("K1") ? 1 / Factors.of(n).d2() : new RangeSigma(1, 1, n).sigma();
    assertEquals(printed, own, 5.1e-5);
  }

  /** d2* and its degrees of freedom for one range (Duncan's table as the manual prints it). */
  @ParameterizedTest
  @CsvSource({
    "2, 1.41421, 1.0",
    "3, 1.91155, 2.0",
    "4, 2.23887, 2.9",
    "5, 2.48124, 3.8",
    "6, 2.67253, 4.7",
    "8, 2.96288, 6.3",
    "10, 3.17905, 7.7"
  })
  void degreesOfFreedomOfARange(int n, double star, double degrees) {
    RangeSigma sigma = new RangeSigma(1, 1, n);
    assertEquals(star, sigma.d2Star(), 1.1e-5);
    assertEquals(degrees, sigma.degreesOfFreedom(), 0.051);
  }

  @Test
  void exactConstantsAreASetting() {
    StudySettings exact =
        StudySettings.usual().with(new Evaluation(0.95, 6, 0.25, Constants.EXACT));
    double ranged = StudyData.value(RangeStudy.of(READINGS, exact), "EV");
    assertEquals(0.341667 / new RangeSigma(1, 30, 3).d2Star(), ranged, 1e-6);
    assertTrue(ranged < StudyData.value(RESULT, "EV"));
  }

  /**
   * Montgomery, Introduction to Statistical Quality Control, Table 8.4 and Example 8.7 (from
   * memory): one operator, σ gauge = R̄/1.128 = 0.887, P/T 0.097 between 5 and 60.
   */
  @Test
  void oneOperator() {
    List<StudyReading> readings = StudyData.readings("parts-one-operator.csv");
    StudySettings limits = StudySettings.usual().with(new Tolerance(5.0, 60.0));
    StudyResult result = RangeStudy.of(readings, limits);
    assertEquals(
        22.3, readings.stream().mapToDouble(StudyReading::value).average().orElse(0), 1e-9);
    assertEquals(1.0, StudyData.value(result, "meanRange"), 1e-12);
    assertEquals(0.887, StudyData.value(result, "EV"), 1e-3, "printed with d2 = 1.128");
    assertEquals(0.79, Math.pow(StudyData.value(result, "GRR"), 2), 5e-3);
    assertEquals(9.7, StudyData.value(result, "percentToleranceGRR"), 0.05);
    assertTrue(result.figure("AV").isEmpty());
  }

  private static List<StudyReading> parts(int count) {
    double[][][] many = new double[count][1][2];
    for (int i = 0; i < count; i++) {
      many[i][0][0] = i;
      many[i][0][1] = i + 1.0;
    }
    return StudyData.crossed(many);
  }

  @Test
  void tooManyPartsForRangesAreRefused() {
    BadInput refused =
        assertThrows(BadInput.class, () -> RangeStudy.of(parts(101), StudySettings.usual()));
    assertTrue(String.valueOf(refused.getMessage()).contains("2 to 100"), refused.getMessage());
  }

  /** Part means run from 0.5 to 39.5: a range of 39 over d2*(1, 40) makes PV. */
  @Test
  void fortyPartsAreStudied() {
    double star = new RangeSigma(1, 1, 40).d2Star();
    StudyResult result = RangeStudy.of(parts(40), StudySettings.usual());
    assertEquals(39 / star, StudyData.value(result, "PV"), 1e-9);
  }

  /** Mean range over sigma of 50 and 100 normal values: L. H. C. Tippett 1925, from memory. */
  @Test
  void constantsBeyondThoseOfControlCharts() {
    assertEquals(4.498, RangeIntegrals.mean(50), 1e-3);
    assertEquals(5.015, RangeIntegrals.mean(100), 1e-3);
    double[] below = {RangeIntegrals.deviation(100), RangeIntegrals.deviation(50)};
    assertEquals(below[0], simulatedDeviation(100), 0.013);
    assertEquals(below[1], simulatedDeviation(50), 0.013);
  }

  /** Of 20,000 ranges: its standard error is half a percent, a quarter of what is allowed. */
  private static double simulatedDeviation(int n) {
    SplittableRandom random = new SplittableRandom(1);
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < 20_000; i++) {
      double[] values = random.doubles(n).map(NORMAL::inverseCumulativeProbability).toArray();
      double range =
          Arrays.stream(values).max().orElseThrow() - Arrays.stream(values).min().orElseThrow();
      sum += range;
      squares += range * range;
    }
    double mean = sum / 20_000;
    return Math.sqrt(squares / 20_000 - mean * mean);
  }

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
}
