package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Lengths;
import org.chordlog.radius.Chord;
import org.chordlog.study.LinearityStudy.BandPoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Five masters, twelve readings each: automotive reference manual on measurement systems analysis,
 * 4th ed., Table III-B 4/5 (data and printed results from memory).
 */
final class LinearityStudyTest {
  private static final LinearityStudy STUDY =
      LinearityStudy.of(
          StudyData.column("linearity-five-masters.csv", "reference"),
          StudyData.column("linearity-five-masters.csv", "value"),
          StudySettings.usual().withProcessSigma(1.0));
  private static final StudyResult RESULT = STUDY.result(null);

  @ParameterizedTest
  @CsvSource({
    "biasAt 2, 0.491667, 5e-7",
    "biasAt 4, 0.125, 5e-7",
    "biasAt 6, 0.025, 5e-7",
    "biasAt 8, -0.29167, 5e-6",
    "biasAt 10, -0.61667, 5e-6",
    "slope, -0.131667, 5e-7",
    "intercept, 0.736667, 5e-7",
    "R2, 0.714, 5e-4",
    "residualDeviation, 0.23954, 5e-6",
    "linearity, 0.79, 5e-4"
  })
  void printedFigures(String name, double printed, double within) {
    assertEquals(printed, StudyData.value(RESULT, name), within);
  }

  @Test
  void printedTests() {
    assertEquals(-12.043, StudyData.test(RESULT, "slope").statistic(), 5e-4);
    assertEquals(10.158, StudyData.test(RESULT, "intercept").statistic(), 5e-4);
    assertEquals(58, StudyData.test(RESULT, "slope").degreesOfFreedom());
    double half = StudyData.upper(RESULT, "slope") - StudyData.value(RESULT, "slope");
    double s = Math.abs(StudyData.value(RESULT, "slope")) / 12.042559;
    assertEquals(2.00172, half / s, 5e-6, "t(0.975, 58)");
  }

  /** Band at 2, 6 and 10, recomputed with 50 digits, not printed. */
  @ParameterizedTest
  @CsvSource({"0, 0.47333, 0.10722", "2, -0.05333, 0.06190", "4, -0.58000, 0.10722"})
  void band(int at, double bias, double half) {
    BandPoint point = STUDY.band(5).get(at);
    assertEquals(bias, point.bias(), 5e-6);
    assertEquals(half, point.upper() - point.bias(), 5e-6);
    assertEquals(half, point.bias() - point.lower(), 5e-6);
  }

  @Test
  void failsWhereZeroIsOutsideTheBand() {
    assertEquals(StudyVerdict.FAILS, RESULT.conclusion().verdict());
    assertEquals(
        StudyVerdict.PASSES,
        java.util.Objects.requireNonNull(StudyData.figure(RESULT.figures(), "bandAt 6").judged())
            .verdict());
  }

  /** The line, and the places where its band leaves 0 out. */
  @Test
  void theFiguresThatDecideAreAmongThoseReadFirst() {
    assertEquals(
        List.of("slope", "intercept", "bandAt 2", "bandAt 4", "bandAt 8", "bandAt 10"),
        RESULT.mainFigures().stream().map(StudyFigure::name).toList());
  }

  /**
   * ISO 11095 and e-Handbook 3.6.7.3, CALIBRATIONLINE (data read; figures recomputed, none read):
   * intercept 0.2357623 (0.0243003), slope 0.9870377 (0.0034406), s 0.0620320, F(8, 30) 0.69176.
   */
  @Test
  void calibrationLineOfTheHandbook() {
    double[] x = StudyData.column("handbook-calibrationline.csv", "x");
    double[] y = StudyData.column("handbook-calibrationline.csv", "y");
    StraightLine line = StraightLine.of(x, y);
    assertEquals(0.2357623, line.at(0), 5e-8);
    assertEquals(0.0243003, line.deviationAt(0), 5e-8);
    assertEquals(0.9870377, line.slope(), 5e-8);
    assertEquals(0.0034406, line.slopeDeviation(), 5e-8);
    assertEquals(0.0620320, line.residualDeviation(), 5e-8);
    StudyTest fit =
        StudyData.test(LinearityStudy.of(x, y, StudySettings.usual()).result(null), "lack of fit");
    assertEquals(0.69176, fit.statistic(), 5e-6);
    assertEquals(8, fit.degreesOfFreedom());
  }

  /**
   * GUM (JCGM 100:2008) H.3, calibration of a thermometer: y1 = −0.1712 (0.0029), y2 = 0.00218
   * (0.00067) at 20 °C, r −0.930, s 0.0035 (Table H.6, from memory).
   */
  @Test
  void thermometerOfTheGum() {
    double[] t = {
      21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    double[] b = {
      -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
    };
    StraightLine line = StraightLine.of(t, b);
    assertEquals(-0.1712, line.at(20), 5.1e-5);
    assertEquals(0.0029, line.deviationAt(20), 5.1e-5);
    assertEquals(0.00218, line.slope(), 5.1e-6);
    assertEquals(0.00067, line.slopeDeviation(), 5.1e-6);
    assertEquals(-0.930, line.correlationAt(20), 5.1e-4);
    assertEquals(0.0035, line.residualDeviation(), 5.1e-5);
    assertEquals(-0.1494, line.at(30), 5.1e-5, "predicted at 30 °C");
    assertEquals(0.0041, line.deviationAt(30), 5.1e-5);
  }

  /** A span 0.04 mm too long and a zero 3 µm off, over master radii of 500 to 3000 mm. */
  @Test
  void ofDepthsTheSlopeIsTheSpansErrorAndTheInterceptTheZeros() {
    double[] radii = {500, 800, 1200, 2000, 3000};
    double[] nominal = Arrays.stream(radii).map(r -> Chord.depthMm(1 / r, 200, 0)).toArray();
    double[] seen =
        Arrays.stream(radii).map(r -> Chord.depthMm(1 / r, 200.04, 0) + 0.003).toArray();
    StudyResult result =
        LinearityStudy.of(nominal, seen, StudySettings.usual().with(FigureUnit.as("mm")))
            .result(200.0);
    assertEquals(0.04, StudyData.value(result, "spanError"), 6e-4);
    assertEquals(0.003, StudyData.value(result, "zeroError"), 2e-5);
    double most =
        Arrays.stream(StraightLine.of(nominal, minus(seen, nominal)).residuals())
            .map(Math::abs)
            .max()
            .orElseThrow();
    assertTrue(most < 1e-5, "the depth is nearly a line in the span: " + most);
    assertEquals(StudyVerdict.FAILS, result.conclusion().verdict());
    String says = result.conclusion().says().toString();
    assertTrue(says.startsWith("Not good enough: fitted bias at depth 1.67 mm is 0.00"), says);
    assertTrue(says.contains(" mm (interval 0.00"), says);
    String inch = result.conclusion().says().in(Lengths.INCH);
    assertTrue(inch.contains("fitted bias at depth 0.0656 in is 0.000"), inch);
    assertFalse(inch.contains("mm"), inch);
  }

  private static double[] minus(double[] a, double[] b) {
    double[] difference = a.clone();
    Arrays.setAll(difference, i -> a[i] - b[i]);
    return difference;
  }

  /** 0 is inside the band at both ends and outside between them. */
  @Test
  void noPlaceBetweenTheMastersEscapes() {
    double[] x = {0, 0, 10, 10, 0, 10};
    double[] biases = {0.35, 0.05, 0.36, 0.06, 0.2, 0.2};
    double[] values = new double[6];
    Arrays.setAll(values, i -> x[i] + biases[i]);
    StudyResult result = LinearityStudy.of(x, values, StudySettings.usual()).result(null);
    List<StudyFigure> bands =
        result.figures().stream().filter(f -> f.name().startsWith("bandAt")).toList();
    assertEquals(3, bands.size(), bands.toString());
    assertEquals(StudyVerdict.FAILS, result.conclusion().verdict());
  }

  @Test
  void oneMasterIsNoLine() {
    BadInput refused =
        assertThrows(
            BadInput.class,
            () ->
                LinearityStudy.of(
                    new double[] {5, 5, 5}, new double[] {5, 6, 5.5}, StudySettings.usual()));
    assertTrue(String.valueOf(refused.getMessage()).contains("the same in every row"));
  }
}
