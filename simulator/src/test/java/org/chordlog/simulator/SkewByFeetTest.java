package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Section.RoundTube;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.RadiusModel;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The skew that the budget takes off, against the geometry in three dimensions. */
final class SkewByFeetTest {
  private static final double SPAN = 200;
  private static final int ANGLES = 200;

  private static RadiusModel model(double tube, FootKind kind, double foot, Face face) {
    Bridge bridge = new Bridge(0, "b", new Bridge.Span(SPAN, 0), new Bridge.Feet(foot, 0, kind), 1);
    Indicator indicator = new Indicator(0.001, 0.001, 50);
    RoundTube section = new RoundTube(tube, 2);
    return RadiusModel.of(new SetUp(bridge, indicator, null, null, section, face, Face.CENTRELINE));
  }

  /** Mean radius read less the true one, over angles evenly within ± 1°. */
  private static double exactBias(
      double centreline, double tube, FootKind kind, double foot, Face face, RadiusModel model) {
    SkewedBridge bridge = new SkewedBridge(SPAN / 2, foot, kind);
    double sum = 0;
    for (int i = 0; i < ANGLES; i++) {
      double depth = bridge.depthMm(centreline, tube / 2, face, (i + 0.5) / ANGLES);
      sum += radius(model.estimate(Length.nm(depth), 0, 1)) - centreline;
    }
    return sum / ANGLES;
  }

  private static double radius(RadiusEstimate estimate) {
    Double radius = estimate.radiusMm();
    assertTrue(radius != null);
    return radius == null ? 0 : radius;
  }

  /** Centreline 1,000 mm; the bias taken off may miss by a tenth of it or 0.05 mm. */
  @ParameterizedTest
  @CsvSource({
    "50, POINT, 0, OUTER",
    "50, POINT, 0, INNER",
    "50, ALONG, 0, OUTER",
    "50, BALL, 10, OUTER",
    "50, BALL, 10, INNER",
    "20, BALL, 10, OUTER",
    "50, ACROSS, 0, OUTER",
    "50, ACROSS, 0, INNER",
    "50, ACROSS, 10, OUTER"
  })
  void theBiasTakenOffIsThatOfTheFeet(double tube, FootKind kind, double foot, Face face) {
    RadiusModel model = model(tube, kind, foot, face);
    double exact = exactBias(1000, tube, kind, foot, face, model);
    long straight =
        Length.nm(new SkewedBridge(SPAN / 2, foot, kind).depthMm(1000, tube / 2, face, 0));
    double taken = model.placing(straight, 0, 1).biasMm();
    assertEquals(exact, taken, Math.max(0.05, Math.abs(exact) / 10));
  }
}
