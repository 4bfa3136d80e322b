package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.junit.jupiter.api.Test;

/** Invented set-ups; the expected values are worked out by hand from the formulas of the model. */
final class RadiusModelTest {
  static final Section TUBE = new Section.RoundTube(50, 3);
  private static final Indicator INDICATOR = new Indicator(0.01, 0.02, 25);

  static SetUp setUp(double foot, Face measured, Face specified) {
    Bridge bridge = new Bridge(1, "B", new Bridge.Span(200, 0.02), new Bridge.Feet(foot, 0.005), 0);
    return new SetUp(bridge, INDICATOR, null, null, TUBE, measured, specified);
  }

  private static RadiusEstimate estimate(SetUp setUp, double depthMm) {
    return RadiusModel.of(setUp).estimate(Length.nm(depthMm), 0, 1);
  }

  @Test
  void aPythagoreanTripleIsExactOnTheOuterFace() {
    RadiusEstimate e = estimate(setUp(0, Face.OUTER, Face.OUTER), 1);
    assertEquals(5000.5, assertNotNullAnd(e), 1e-9);
    assertTrue(e.lowerMm() < 5000.5 && assertUpper(e) > 5000.5);
  }

  @Test
  void theOtherFacesFollowFromTheSection() {
    double outer = assertNotNullAnd(estimate(setUp(5, Face.OUTER, Face.OUTER), 5));
    assertEquals(997.5, outer, 1e-9);
    assertEquals(
        outer - 25, assertNotNullAnd(estimate(setUp(5, Face.OUTER, Face.CENTRELINE), 5)), 1e-9);
    assertEquals(outer - 50, assertNotNullAnd(estimate(setUp(5, Face.OUTER, Face.INNER), 5)), 1e-9);
    assertEquals(
        1007.5 + 50, assertNotNullAnd(estimate(setUp(5, Face.INNER, Face.OUTER), -5)), 1e-9);
  }

  @Test
  void aDepthWithinItsUncertaintyIsFlatAndNamesTheLargestRadius() {
    RadiusEstimate e = estimate(setUp(0, Face.OUTER, Face.OUTER), 0.005);
    assertTrue(e.flat());
    assertNull(e.upperMm());
    double u = Math.hypot(0.02 / Math.sqrt(3), 0.01 / Math.sqrt(6));
    assertEquals(100 * 100 / 2.0 / (2 * 1.6448536 * u), e.lowerMm(), 5);
  }

  @Test
  void aDepthOfTheWrongSignIsRefused() {
    SetUp inner = setUp(0, Face.INNER, Face.INNER);
    assertThrows(BadInput.class, () -> estimate(inner, 2));
    assertThrows(BadInput.class, () -> estimate(setUp(0, Face.OUTER, Face.OUTER), -2));
  }

  private static double assertNotNullAnd(RadiusEstimate e) {
    Double radius = e.radiusMm();
    assertNotNull(radius);
    return radius;
  }

  private static double assertUpper(RadiusEstimate e) {
    Double upper = e.upperMm();
    assertNotNull(upper);
    return upper;
  }
}
