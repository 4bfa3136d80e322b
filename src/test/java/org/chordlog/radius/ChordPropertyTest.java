package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

final class ChordPropertyTest {
  /** Radius as a multiple of half the span, both faces, to a million spans. */
  @Property
  void roundTrip(
      @ForAll @Scale(9) @DoubleRange(min = 10, max = 2000) double span,
      @ForAll @Scale(9) @DoubleRange(min = 0, max = 0.2) double footShare,
      @ForAll @Scale(9) @DoubleRange(min = 0.1, max = 14) double logRatio,
      @ForAll boolean convex) {
    double foot = footShare * span / 2;
    double radius = span / 2 * Math.exp(logRatio) + foot;
    double curvature = (convex ? 1 : -1) / radius;
    double back = Chord.curvaturePerMm(Chord.depthMm(curvature, span, foot), span, foot);
    assertEquals(1, back / curvature, 1e-12);
  }

  @Property
  void aDeeperReadingIsATighterCurve(
      @ForAll @Scale(9) @DoubleRange(min = 10, max = 2000) double span,
      @ForAll @Scale(9) @DoubleRange(min = 0, max = 0.2) double footShare,
      @ForAll @Scale(9) @DoubleRange(min = -0.99, max = 0.98) double share) {
    double foot = footShare * span / 2;
    double half = span / 2;
    double shallow = Chord.curvaturePerMm(share * half, span, foot);
    assertTrue(Chord.curvaturePerMm((share + 0.01) * half, span, foot) > shallow);
  }

  /** Near flat κ = 8h/span² to first order, from either side, and 0 at 0. */
  @Property
  void flatIsPassedSmoothly(
      @ForAll @Scale(9) @DoubleRange(min = 10, max = 2000) double span,
      @ForAll @Scale(9) @DoubleRange(min = 0, max = 5) double foot,
      @ForAll @Scale(9) @DoubleRange(min = -1, max = 1) double picometres) {
    double depth = picometres * 1e-9;
    double half = Math.max(span, 4 * foot + 1) / 2;
    double curvature = Chord.curvaturePerMm(depth, 2 * half, foot);
    assertEquals(2 * depth / (half * half), curvature, 1e-8 * Math.abs(curvature));
    assertEquals(0, Chord.curvaturePerMm(0, span, 0));
  }

  /** At 1e6 mm on 200 mm the depth is 0.005 mm + 1.25e-13 mm: a²/2R (1 + a²/4R²). */
  @Property(tries = 1)
  void nothingCancelsAtAKilometre() {
    double depth = Chord.depthMm(1e-6, 200, 0);
    assertEquals(0.005 * (1 + 1e4 / 4e12), depth, 0.005 * 2.3e-16);
    assertEquals(1e6, 1 / Chord.curvaturePerMm(depth, 200, 0), 1e-9);
  }
}
