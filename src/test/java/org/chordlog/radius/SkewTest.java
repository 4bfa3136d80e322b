package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Euler's theorem (1760, any text on differential geometry): identities and the tube table. */
final class SkewTest {
  private static final double ALONG = 1 / 1025.0;
  private static final double ACROSS = 1 / 25.0;

  private static double at(double degrees) {
    return Skew.normalCurvature(ALONG, ACROSS, degrees);
  }

  @Test
  void identities() {
    assertEquals(ALONG, at(0));
    assertEquals(ACROSS, at(90), 1e-16);
    assertEquals((ALONG + ACROSS) / 2, at(45), 1e-16);
    assertEquals(ALONG + ACROSS, at(20) + at(110), 1e-16);
    assertEquals(0.01, Skew.normalCurvature(0.01, 0.01, 33), 1e-17);
  }

  /** A straight cylinder of radius 10: at 30° 40, at 45° 20. */
  @Test
  void cylinder() {
    assertEquals(40, 1 / Skew.normalCurvature(0, 0.1, 30), 1e-12);
    assertEquals(20, 1 / Skew.normalCurvature(0, 0.1, 45), 1e-12);
  }

  /** Outer crest of a bent tube, own computation in double. */
  @ParameterizedTest
  @CsvSource({
    "1000, 25, 0.5, 1021.88723", "1000, 25, 1, 1012.66227", "1000, 25, 5, 786.13643",
    "1000, 50, 1, 1043.64241", "1000, 50, 3, 995.46726", "500, 30, 2, 519.45528",
    "500, 30, 5, 470.44118"
  })
  void tubes(double axis, double tube, double degrees, double seen) {
    double curvature = Skew.normalCurvature(1 / (axis + tube), 1 / tube, degrees);
    assertEquals(seen, 1 / curvature, 5e-6);
  }

  @Test
  void theOperatorIsToldInPlainWords() {
    assertEquals(
        "Turned 1° out of the bend plane the bridge would read about 1.2 % too tight.",
        Skew.sentence(ALONG, ACROSS, 1));
    assertEquals(
        "Turned 1° out of the bend plane the bridge would read about 1.2 % too slack.",
        Skew.sentence(-1 / 975.0, ACROSS, 1));
    assertEquals(
        "Turned 20° out of the bend plane the bridge would show this bend as flat or as bent the"
            + " other way.",
        Skew.sentence(-1 / 975.0, ACROSS, 20));
  }

  /** Mean and standard deviation of tan²φ by Simpson's rule, on both branches of the formula. */
  @ParameterizedTest
  @CsvSource({"0.01", "1", "5.7", "5.8", "30", "45"})
  void spread(double limit) {
    Skew.Spread spread = Skew.Spread.within(limit);
    double mean = meanPower(limit, 2);
    assertEquals(1, spread.mean() / mean, 1e-7);
    assertEquals(1, spread.deviation() / Math.sqrt(meanPower(limit, 4) - mean * mean), 1e-6);
  }

  /** Small angles: φ² evenly spread has mean L²/3 and variance 4L⁴/45. */
  @Test
  void spreadOfSmallAngles() {
    double square = Math.pow(Math.toRadians(0.1), 2);
    Skew.Spread spread = Skew.Spread.within(0.1);
    assertEquals(1 / 3.0, spread.mean() / square, 1e-5);
    assertEquals(Math.sqrt(4 / 45.0), spread.deviation() / square, 1e-5);
    assertEquals(new Skew.Spread(0, 0), Skew.Spread.within(0));
  }

  private static double meanPower(double limit, int power) {
    int n = 2000;
    double sum = 0;
    for (int i = 0; i <= n; i++) {
      int weight = i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2;
      sum += weight * Math.pow(Math.tan(Math.toRadians(limit) * i / n), power);
    }
    return sum / (3.0 * n);
  }

  /** What Euler's formula turns a bend into, its inverse turns back, at any angle and face. */
  @ParameterizedTest
  @CsvSource({"OUTER, 1", "OUTER, 30", "INNER, 1", "INNER, 30"})
  void unskewedGivesTheBendBack(Face face, double degrees) {
    RadiusModel model = RadiusModel.of(RadiusModelTest.setUp(0, face, face));
    double along = Faces.sign(face) / 1000.0;
    double seen = Skew.normalCurvature(along, ACROSS, degrees);
    double tan = Math.tan(Math.toRadians(degrees));
    assertEquals(along, model.skew().along(seen, tan), 1e-16);
  }

  /** The value is the chord's; the interval moves against the bias, on both faces. */
  @ParameterizedTest
  @CsvSource({"OUTER, -1", "INNER, 1"})
  void theIntervalStandsAroundTheValueLessTheMeanBias(Face face, int way) {
    RadiusModel straight = RadiusModel.of(skewed(face, 0));
    RadiusModel turned = RadiusModel.of(skewed(face, 1));
    long depth = Length.nm(straight.depthForMm(1000));
    RadiusEstimate without = straight.estimate(depth, 0, 1);
    RadiusEstimate with = turned.estimate(depth, 0, 1);
    assertEquals(without.radiusMm(), with.radiusMm());
    double mean = Math.pow(Math.toRadians(1), 2) / 3;
    double across = ACROSS - Faces.sign(face) / 1000.0;
    assertEquals(way * mean * across, with.centrePerMm() - without.centrePerMm(), 1e-9);
    Budget budget = turned.budget(depth, 0, 1);
    assertEquals(way * mean * across * 1e6, budget.bias(), 1e-2);
  }

  /** A decision looks at the interval: what is only slack through skew is not out of limits. */
  @Test
  void decisionsStandAroundTheCentre() {
    RadiusModel turned = RadiusModel.of(skewed(Face.OUTER, 1));
    RadiusEstimate e = turned.estimate(Length.nm(turned.depthForMm(1000)), 0, 1);
    double centre = 1 / e.centrePerMm();
    double guard = Conformity.ISO_14253_1.guardFactor() * e.coverageFactor();
    double u = e.standardUncertaintyPerMm();
    double tight = 1 / (e.centrePerMm() + guard * u);
    assertTrue(centre > 1003.9 && tight < 1000, centre + ", " + tight);
    assertEquals(Decision.CONFORMS, decide(e, tight - 0.01, null));
    assertEquals(Decision.UNDECIDED, decide(e, tight + 0.01, null));
    double slack = 1 / (e.centrePerMm() - guard * u);
    assertEquals(Decision.CONFORMS, decide(e, null, slack + 0.01));
    assertEquals(Decision.UNDECIDED, decide(e, null, slack - 0.01));
    assertEquals(Decision.DOES_NOT_CONFORM, decide(e, null, tight - 0.01));
  }

  private static Decision decide(RadiusEstimate e, @Nullable Double lower, @Nullable Double upper) {
    return Conformity.ISO_14253_1.decide(e, lower, upper);
  }

  private static SetUp skewed(Face face, double degrees) {
    Bridge bridge =
        new Bridge(1, "B", new Bridge.Span(200, 0.02), new Bridge.Feet(0, 0.005), degrees);
    Indicator indicator = new Indicator(0.001, 0.003, 25);
    return new SetUp(bridge, indicator, null, null, RadiusModelTest.TUBE, face, face);
  }
}
