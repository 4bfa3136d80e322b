package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;

/** One-way analysis of variance. */
final class OneOperatorStudyTest {
  private static List<StudyReading> parts(double[][] values) {
    double[][][] one = new double[values.length][1][];
    for (int i = 0; i < values.length; i++) {
      one[i][0] = values[i];
    }
    return StudyData.crossed(one);
  }

  /** NIST StRD SiRstv, one-way analysis of variance (data and certified values from memory). */
  @Test
  void certifiedSiliconResistivity() {
    double[][] instruments = {
      {196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
      {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
      {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
      {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
      {196.2119, 196.1051, 196.1850, 196.0052, 196.2090}
    };
    StudyResult result = OneOperatorStudy.of(parts(instruments), StudySettings.usual());
    AnovaRow between = StudyData.row(result, "piece");
    assertEquals(5.11462616000000e-2, between.sumOfSquares(), 1e-13);
    assertEquals(2.16636560000000e-1, StudyData.row(result, "repeat").sumOfSquares(), 1e-13);
    assertEquals(1.18046237440255, between.f() == null ? 0 : between.f(), 1e-12);
    assertEquals(4, between.degreesOfFreedom());
    assertEquals(1.04076068334656e-1, StudyData.value(result, "EV"), 1e-13, "residual deviation");
  }

  /**
   * NIST StRD SmLs01, 04 and 07 (rule of the data and certified values from memory: nine treatments
   * of 21, between 1.68, within 1.80, F 21): the same digits on 0, 10⁶ and 10¹². At 10¹² the data
   * themselves are exact to 1e-4 only.
   */
  @Test
  void certifiedOnLargeLevels() {
    double[] digits = {14, 9, 3};
    double[] levels = {0, 1e6, 1e12};
    for (int i = 0; i < levels.length; i++) {
      StudyResult result = OneOperatorStudy.of(parts(simple(levels[i])), StudySettings.usual());
      double f = java.util.Objects.requireNonNull(StudyData.row(result, "piece").f());
      double seen = -Math.log10(Math.max(1e-15, Math.abs(f / 21 - 1)));
      assertTrue(seen >= digits[i], levels[i] + ": " + seen + " digits, F " + f);
    }
  }

  /** Treatment means 1.4, then 1.3 and 1.5 in turn; in each its mean, then 0.1 below and above. */
  private static double[][] simple(double level) {
    double[][] values = new double[9][21];
    for (int i = 0; i < 9; i++) {
      double mean = i == 0 ? 1.4 : i % 2 == 1 ? 1.3 : 1.5;
      for (int k = 0; k < 21; k++) {
        double off = k == 0 ? 0 : k % 2 == 1 ? -0.1 : 0.1;
        values[i][k] = level + Math.round(10 * (mean + off)) / 10.0;
      }
    }
    return values;
  }

  /** Montgomery, Table 8.4 (from memory), by analysis of variance. */
  @Test
  void repeatabilityOfOneOperator() {
    StudyResult result =
        OneOperatorStudy.of(StudyData.readings("parts-one-operator.csv"), StudySettings.usual());
    assertEquals(0.75, Math.pow(StudyData.value(result, "EV"), 2), 1e-12, "15/20");
    assertEquals(392.4, StudyData.row(result, "total").sumOfSquares(), 1e-9);
    assertEquals(10.0615, 392.4 / 39, 1e-4, "total variance of the example");
    assertTrue(result.cautions().get(0).startsWith("One operator"));
  }

  @Test
  void severalOperatorsAndOneRepeatAreRefused() {
    List<StudyReading> two = StudyData.readings("parts-appraisers-trials.csv");
    assertThrows(BadInput.class, () -> OneOperatorStudy.of(two, StudySettings.usual()));
    List<StudyReading> single = new ArrayList<>();
    single.add(new StudyReading("1", "", "A", 1, 0, 1.0));
    single.add(new StudyReading("2", "", "A", 1, 0, 2.0));
    assertThrows(BadInput.class, () -> OneOperatorStudy.of(single, StudySettings.usual()));
  }
}
