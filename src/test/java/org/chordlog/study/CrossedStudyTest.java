package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.study.StudySettings.Constants;
import org.chordlog.study.StudySettings.Evaluation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Ten parts, three appraisers, three trials: automotive reference manual on measurement systems
 * analysis, 4th ed., Figure III-B 15/16, Tables III-B 7/8 (data and printed results from memory).
 */
final class CrossedStudyTest {
  private static final List<StudyReading> READINGS =
      StudyData.readings("parts-appraisers-trials.csv");
  private static final StudyResult RESULT = CrossedStudy.of(READINGS, StudySettings.usual());

  @ParameterizedTest
  @CsvSource({
    "operator, 3.1673, 2, 1.58363",
    "piece, 88.3619, 9, 9.81799",
    "piece × operator, 0.3590, 18, 0.01994",
    "repeat, 2.7589, 60, 0.04598",
    "'repeat and interaction, pooled', 3.1179, 78, 0.03997"
  })
  void analysisOfVariance(String source, double squares, double degrees, double meanSquare) {
    AnovaRow row = StudyData.row(RESULT, source);
    assertEquals(squares, row.sumOfSquares(), 5.1e-5);
    assertEquals(degrees, row.degreesOfFreedom());
    assertEquals(meanSquare, row.meanSquare() == null ? 0 : row.meanSquare(), 5.1e-6);
  }

  @Test
  void totalAndRatios() {
    AnovaRow total = StudyData.row(RESULT, "total");
    assertEquals(94.6471, total.sumOfSquares(), 5.1e-5);
    assertEquals(89, total.degreesOfFreedom());
    double equipment = meanSquare("repeat");
    assertEquals(34.44, meanSquare("operator") / equipment, 5.1e-3, "printed against equipment");
    assertEquals(213.52, meanSquare("piece") / equipment, 5.1e-3, "printed against equipment");
    StudyTest interaction = StudyData.test(RESULT, "interaction");
    assertEquals(0.434, interaction.statistic(), 5.1e-4);
    assertEquals(0.974106, interaction.p(), 5e-7, "recomputed, not printed");
  }

  private static double meanSquare(String source) {
    Double value = StudyData.row(RESULT, source).meanSquare();
    return value == null ? Double.NaN : value;
  }

  @ParameterizedTest
  @CsvSource({
    "EV, 0.199933, 5e-7",
    "AV, 0.226838, 6e-7",
    "GRR, 0.302373, 2e-6", // printed 1.5e-6 too high
    "PV, 1.042327, 6e-7",
    "TV, 1.085, 5e-4",
    "percentEV, 18.4, 0.05",
    "percentAV, 20.9, 0.05",
    "percentGRR, 27.9, 0.05",
    "percentPV, 96.0, 0.05",
    "percentContributionGRR, 7.76, 5e-3",
    "ndcUnrounded, 4.86, 1e-3",
    "ndc, 4, 0"
  })
  void printedFigures(String name, double printed, double within) {
    assertEquals(printed, StudyData.value(RESULT, name), within);
  }

  @Test
  void theOtherReadingStandsBeside() {
    assertEquals(1, RESULT.alternatives().size());
    assertEquals("interaction kept", RESULT.alternatives().get(0).name());
    List<StudyFigure> kept = RESULT.alternatives().get(0).figures();
    assertEquals(0, StudyData.value(kept, "IA"), "estimate below 0");
    assertEquals(0.04598222, Math.pow(StudyData.value(kept, "EV"), 2), 5e-9);
    assertEquals(0.05212292, Math.pow(StudyData.value(kept, "AV"), 2), 5e-9);
    assertEquals(1.08867214, Math.pow(StudyData.value(kept, "PV"), 2), 5e-9);
  }

  /** Burdick, Borror and Montgomery (2003) print 0.0499 and 2.1217 for σ²gauge (from memory). */
  @Test
  void gaugeVarianceByModifiedLargeSamples() {
    StudyFigure gauge = StudyData.figure(RESULT.alternatives().get(0).figures(), "GRR");
    assertEquals(0.04992, square(gauge.lower()), 5e-6);
    assertEquals(2.12171, square(gauge.upper()), 5e-6);
  }

  private static double square(@org.jspecify.annotations.Nullable Double value) {
    return value == null ? Double.NaN : value * value;
  }

  @Test
  void threeOperatorsDecideNothing() {
    assertEquals(StudyVerdict.UNDECIDED, RESULT.conclusion().verdict());
    assertTrue(StudyData.lower(RESULT, "percentGRR") < 16);
    assertTrue(StudyData.upper(RESULT, "percentGRR") > 75);
    assertTrue(RESULT.cautions().stream().anyMatch(text -> text.startsWith("3 operators say")));
  }

  @Test
  void poolingIsASetting() {
    StudySettings never =
        StudySettings.usual().with(new Evaluation(0.95, 6, 1, Constants.AS_PUBLISHED));
    StudyResult kept = CrossedStudy.of(READINGS, never);
    assertEquals("interaction pooled with repeatability", kept.alternatives().get(0).name());
    assertEquals(
        RESULT.figures(), kept.alternatives().get(0).figures(), "the same figures, changed over");
  }

  @Test
  void toleranceByBothLimitsAndByOne() {
    StudySettings both = StudySettings.usual().with(new Tolerance(-3.0, 3.0));
    double sigma = StudyData.value(RESULT, "GRR");
    assertEquals(
        100 * sigma, StudyData.value(CrossedStudy.of(READINGS, both), "percentToleranceGRR"), 1e-9);
    StudySettings one = StudySettings.usual().with(new Tolerance(null, 3.0));
    double mean = READINGS.stream().mapToDouble(StudyReading::value).average().orElseThrow();
    assertEquals(
        100 * 3 * sigma / (3 - mean),
        StudyData.value(CrossedStudy.of(READINGS, one), "percentToleranceGRR"),
        1e-9);
  }

  /** With a wide process the same gauge is good enough: the interval says so. */
  @Test
  void theProcessMayStandInForTheParts() {
    StudySettings wide = StudySettings.usual().withProcessSigma(10.0);
    StudyResult result = CrossedStudy.of(READINGS, wide);
    assertEquals(10, StudyData.value(result, "TV"), 1e-12);
    assertEquals(
        Math.sqrt(100 - Math.pow(StudyData.value(result, "GRR"), 2)),
        StudyData.value(result, "PV"),
        1e-12);
    assertEquals(StudyVerdict.PASSES, result.conclusion().verdict());
    assertEquals(
        10 * StudyData.upper(result, "GRR"),
        StudyData.upper(result, "percentGRR"),
        0.5,
        "drawn and by modified large samples");
  }

  /** 1/R at 1000 mm: told in mm the figures are those of radii near the nominal. */
  @Test
  void curvatureIsToldInMillimetresAtTheNominal() {
    List<StudyReading> curvatures = READINGS.stream().map(r -> at(r, 1 / radius(r))).toList();
    StudySettings told = StudySettings.usual().with(FigureUnit.atNominal(1000));
    StudyResult result = CrossedStudy.of(curvatures, told);
    assertEquals("mm", StudyData.figure(result.figures(), "GRR").unit());
    assertEquals(StudyData.value(RESULT, "GRR") / 10, StudyData.value(result, "GRR"), 1e-4);
    assertEquals(StudyData.value(RESULT, "percentGRR"), StudyData.value(result, "percentGRR"), 0.1);
  }

  private static double radius(StudyReading reading) {
    return 1000 + reading.value() / 10;
  }

  private static StudyReading at(StudyReading r, double value) {
    return new StudyReading(r.part(), r.place(), r.operator(), r.repeat(), r.order(), value);
  }

  @Test
  void oneRepeatHasNoTestOfTheInteraction() {
    List<StudyReading> first = READINGS.stream().filter(r -> r.repeat() == 1).toList();
    StudyResult result = CrossedStudy.of(first, StudySettings.usual());
    assertTrue(result.alternatives().isEmpty());
    assertFalse(result.tests().stream().anyMatch(test -> test.name().equals("interaction")));
    double interaction = StudyData.row(result, "piece × operator").sumOfSquares() / 18;
    assertEquals(Math.sqrt(interaction), StudyData.value(result, "EV"), 1e-12);
  }

  /** One degree of freedom leaves the upper end open: no figure above 100 times the total. */
  @Test
  void twoOperatorsGiveNoUselessUpperEnd() {
    List<StudyReading> two = READINGS.stream().filter(r -> !r.operator().equals("B")).toList();
    StudyResult result = CrossedStudy.of(two, StudySettings.usual());
    StudyFigure operators = StudyData.figure(result.figures(), "AV");
    Double upper = operators.upper();
    assertTrue(upper == null || upper < 100 * StudyData.value(result, "TV"));
  }

  @Test
  void theSameSeedGivesTheSameDigits() {
    assertEquals(RESULT, CrossedStudy.of(READINGS, StudySettings.usual()));
    StudyResult other = CrossedStudy.of(READINGS, StudySettings.usual().withSeed(2));
    assertEquals(StudyData.upper(RESULT, "percentGRR"), StudyData.upper(other, "percentGRR"), 4.0);
  }
}
