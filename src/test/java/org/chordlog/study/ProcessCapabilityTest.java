package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.FigureMaker.About;
import org.junit.jupiter.api.Test;

/**
 * Capability of the measuring process after ISO 22514-7 (from memory): its two limits and its
 * indices agree by arithmetic, which is the check.
 */
final class ProcessCapabilityTest {
  private static final StudySettings USUAL = StudySettings.usual();

  private static StudyResult of(MeasuringProcess process, double tolerance) {
    return ProcessCapability.of(process, tolerance, USUAL);
  }

  /** At Q_MS = 15 % and Q_MP = 30 % both indices are 4/3. */
  @Test
  void limitsAndIndicesAgree() {
    MeasuringProcess system =
        MeasuringProcess.empty().with(Contribution.EVR, 0.0375, Double.POSITIVE_INFINITY);
    StudyResult atLimit = of(system, 1);
    assertEquals(15, StudyData.value(atLimit, "Q_MS"), 1e-12);
    assertEquals(4.0 / 3, StudyData.value(atLimit, "C_MS"), 1e-12);
    assertEquals(1, StudyData.value(atLimit, "Tmin_MS"), 1e-12);
    MeasuringProcess process =
        system.with(Contribution.AV, Math.sqrt(3) * 0.0375, Double.POSITIVE_INFINITY);
    StudyResult both = of(process, 1);
    assertEquals(30, StudyData.value(both, "Q_MP"), 1e-12);
    assertEquals(4.0 / 3, StudyData.value(both, "C_MP"), 1e-12);
    assertEquals(1, StudyData.value(both, "Tmin_MP"), 1e-12);
  }

  /** The largest of repeatability and resolution counts, once; stated ones have no scatter. */
  @Test
  void sumsByHand() {
    MeasuringProcess process =
        MeasuringProcess.empty()
            .withResolution(0.012)
            .withCalibration(0.008)
            .withBias(-0.003)
            .withLinearity(0.006)
            .with(Contribution.EVR, 0.002, 24)
            .with(Contribution.EVO, 0.005, 60)
            .with(Contribution.STAB, 0.001, 5);
    double system =
        Math.sqrt(0.004 * 0.004 + 0.012 * 0.012 / 12 + (0.003 * 0.003 + 0.006 * 0.006) / 3);
    assertEquals(system, StudyData.value(of(process, 1), "u_MS"), 1e-15);
    double rest = 0.004 * 0.004 + (0.003 * 0.003 + 0.006 * 0.006) / 3 + 0.001 * 0.001;
    assertEquals(Math.sqrt(rest + 0.005 * 0.005), StudyData.value(of(process, 1), "u_MP"), 1e-15);
    assertEquals(
        StudyData.value(of(process, 1), "u_MS"),
        StudyData.lower(of(process, 1), "u_MS"),
        1e-15,
        "the resolution is stated");
  }

  @Test
  void aPermissibleErrorStandsForTheSystem() {
    MeasuringProcess process =
        MeasuringProcess.empty().withPermissibleError(0.03).with(Contribution.EVR, 9, 24);
    assertEquals(0.03 / Math.sqrt(3), StudyData.value(of(process, 1), "u_MS"), 1e-15);
  }

  /** A crossed study's components keep their mean squares, so the gauge's interval is theirs. */
  @Test
  void aStudyGivesTheGaugesInterval() {
    var readings = StudyData.readings("parts-appraisers-trials.csv");
    StudyResult crossed = CrossedStudy.of(readings, USUAL);
    MeasuringProcess process =
        MeasuringProcess.empty().with(CrossedStudy.components(readings, USUAL));
    StudyResult result = of(process, 6);
    assertEquals(StudyData.value(crossed, "GRR"), StudyData.value(result, "u_MP"), 1e-12);
    assertEquals(StudyData.upper(crossed, "GRR"), StudyData.upper(result, "u_MP"), 1e-12);
    assertEquals(StudyVerdict.UNDECIDED, result.conclusion().verdict());
  }

  @Test
  void nothingAddsUpToNothing() {
    assertThrows(BadInput.class, () -> of(MeasuringProcess.empty(), 1));
    assertThrows(
        BadInput.class, () -> of(MeasuringProcess.empty().with(Contribution.EVR, -1, 5), 1));
  }

  @Test
  void aFactorOfOneAndAHalfEitherWayIsSaid() {
    StudyFigure gauge =
        new FigureMaker(USUAL)
            .figure(new About("GRR", "gauge", "", ""), new Interval(0.3, 0.2, 1.2), "mm");
    assertTrue(BudgetComparison.of(gauge, 0.19).caution());
    assertTrue(BudgetComparison.of(gauge, 0.19).says().contains("leaves out"));
    assertFalse(BudgetComparison.of(gauge, 0.3).caution());
    assertTrue(BudgetComparison.of(gauge, 0.5).says().contains("too careful"));
    assertEquals(4, Objects.requireNonNull(BudgetComparison.of(gauge, 0.3).upper()), 1e-12);
  }

  /** Where pieces differ in what is found, only a budget that is too careful can be seen. */
  @Test
  void aBoundOfTheGaugeNeverSaysThatTheBudgetLeavesSomethingOut() {
    StudyFigure most =
        new FigureMaker(USUAL)
            .figure(new About("GRR", "gauge", "", ""), new Interval(0.3, 0.2, 1.2), "mm");
    String above = BudgetComparison.ofMost(most, 0.1).says();
    assertTrue(above.startsWith("The study shows at most 3.00 times"), above);
    assertTrue(above.contains("can't tell"), above);
    assertTrue(BudgetComparison.ofMost(most, 0.3).says().contains("does not scatter more"));
    assertTrue(BudgetComparison.ofMost(most, 0.5).says().contains("too careful"));
    assertEquals(
        BudgetComparison.of(most, 0.1).lower(), BudgetComparison.ofMost(most, 0.1).lower());
  }
}
