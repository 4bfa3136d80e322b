package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Factors;
import org.chordlog.study.BiasStudy.Reference;
import org.junit.jupiter.api.Test;

/**
 * Bias by independent samples: automotive reference manual on measurement systems analysis, Table
 * III-B 1/2, reference 6.00 (from memory; 4th edition unless said).
 */
final class BiasStudyTest {
  private static final double[] READINGS = {
    5.8, 5.7, 5.9, 5.9, 6.0, 6.1, 6.0, 6.1, 6.4, 6.3, 6.0, 6.1, 6.2, 5.6, 6.0
  };

  @Test
  void fourthEdition() {
    StudyResult result = BiasStudy.of(READINGS, new Reference(6.00, 0), StudySettings.usual());
    assertEquals(6.0067, StudyData.value(result, "mean"), 5e-5);
    assertEquals(0.0067, StudyData.value(result, "bias"), 5e-5);
    assertEquals(0.2120, StudyData.value(result, "standardDeviation"), 5e-5);
    StudyTest t = StudyData.test(result, "bias");
    assertEquals(0.12, t.statistic(), 5e-3);
    assertEquals(14, t.degreesOfFreedom());
    assertEquals(-0.1107, StudyData.lower(result, "bias"), 5e-5, "recomputed");
    assertEquals(0.1241, StudyData.upper(result, "bias"), 5e-5, "recomputed");
    assertEquals(StudyVerdict.PASSES, result.conclusion().verdict());
  }

  /** The third edition takes s = range/d2*(1, 15), 10.8 degrees of freedom. */
  @Test
  void thirdEdition() {
    RangeSigma sigma = new RangeSigma(6.4 - 5.6, 1, 15);
    assertEquals(0.22514, sigma.sigma(), 1e-5, "printed with d2* 3.55333, exact 3.55323");
    assertEquals(10.8, sigma.degreesOfFreedom(), 0.051);
    double ofMean = sigma.sigma() / Math.sqrt(15);
    assertEquals(0.05813, ofMean, 5e-6);
    assertEquals(0.1153, 0.0067 / ofMean, 6e-4, "printed from the rounded bias");
    double half = 2.206 * ofMean;
    assertEquals(-0.1215, 0.0066667 - half, 1e-4);
    assertEquals(0.1349, 0.0066667 + half, 1e-4);
    double printed = half * Factors.of(15).d2() / sigma.d2Star();
    assertEquals(-0.1185, 0.0066667 - printed, 2e-4, "its interval is narrower by d2/d2*");
    assertEquals(0.1319, 0.0066667 + printed, 2e-4);
  }

  /**
   * NIST/SEMATECH e-Handbook, 2.5.3.2.1 and 2.6, MPC536: differences of two wirings (data read,
   * results from memory).
   */
  @Test
  void wiringBiasOfTheHandbook() {
    double[] first = StudyData.column("handbook-mpc536.csv", "d_run1");
    double[] second = StudyData.column("handbook-mpc536.csv", "d_run2");
    bias(first, -0.00383, 0.00514, -4.0);
    bias(second, 0.00489, 0.00400, 6.6);
  }

  private static void bias(double[] differences, double mean, double s, double t) {
    StudyResult result = BiasStudy.of(differences, new Reference(0, 0), StudySettings.usual());
    assertEquals(mean, StudyData.value(result, "bias"), 5.1e-6);
    assertEquals(s, StudyData.value(result, "standardDeviation"), 6e-6);
    assertEquals(t, StudyData.test(result, "bias").statistic(), 0.05);
    assertEquals(StudyVerdict.FAILS, result.conclusion().verdict());
  }

  @Test
  void theMastersOwnUncertaintyIsAdded() {
    StudyResult result = BiasStudy.of(READINGS, new Reference(6.00, 0.2), StudySettings.usual());
    double u = Math.sqrt(0.2120198 * 0.2120198 / 15 + 0.1 * 0.1);
    double half =
        (StudyData.upper(result, "biasWithMaster") - StudyData.lower(result, "biasWithMaster")) / 2;
    assertEquals(
        1.969, half / u, 5e-4, "Student's t with 14·(u²/(s²/n))² = 263 degrees of freedom");
    assertTrue(half > 0.1241);
  }

  @Test
  void againstAPermittedBiasTheWholeIntervalCounts() {
    assertEquals(StudyVerdict.PASSES, verdict(0.13));
    assertEquals(StudyVerdict.UNDECIDED, verdict(0.05));
    double[] off = READINGS.clone();
    java.util.Arrays.setAll(off, i -> READINGS[i] + 1);
    StudyResult far =
        BiasStudy.of(
            off,
            new Reference(6, 0),
            StudySettings.usual().with(Criteria.USUAL.withPermittedBias(0.5)));
    assertEquals(StudyVerdict.FAILS, far.conclusion().verdict());
  }

  private static StudyVerdict verdict(double permitted) {
    Criteria criteria = Criteria.USUAL.withPermittedBias(permitted);
    return BiasStudy.of(READINGS, new Reference(6, 0), StudySettings.usual().with(criteria))
        .conclusion()
        .verdict();
  }

  /** A curvature above that of the reference is a radius below it. */
  @Test
  void inCurvatureTheSignIsThatOfTheRadius() {
    double[] curvatures = {1 / 999.0, 1 / 999.2, 1 / 998.8, 1 / 999.1};
    StudyResult result =
        BiasStudy.of(
            curvatures,
            new Reference(1 / 1000.0, 0),
            StudySettings.usual().with(FigureUnit.atNominal(1000)));
    assertEquals(-0.975, StudyData.value(result, "bias"), 2e-3);
    assertEquals(999.025, StudyData.value(result, "mean"), 1e-3);
    assertTrue(StudyData.lower(result, "bias") < StudyData.upper(result, "bias"));
  }

  @Test
  void nothingThatVariesIsRefused() {
    assertThrows(
        BadInput.class,
        () -> BiasStudy.of(new double[] {6, 6, 6}, new Reference(6, 0), StudySettings.usual()));
    assertThrows(
        BadInput.class,
        () -> BiasStudy.of(new double[] {6}, new Reference(6, 0), StudySettings.usual()));
  }
}
