package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ∂R/∂h = (1 − a²/h²)/2, ∂R/∂a = a/|h|, ∂R/∂r = ∓1, and the combined u(R); own computation. */
final class SensitivityTest {
  @ParameterizedTest
  @CsvSource({
    "100, 2.5, 0, 0.02, 0.003, 0, 2001.250000, -799.500000, 40.000000, 2.528399",
    "150, 11.25, 5, 0.03, 0.005, 0.005, 1000.625000, -88.388889, 13.333333, 0.596104",
    "60, 20, 5, 0.01, 0.01, 0.002, 95.000000, -4.000000, 3.000000, 0.050040"
  })
  void table(
      double a,
      double h,
      double foot,
      double uHalfSpan,
      double uDepth,
      double uFoot,
      double radius,
      double byDepth,
      double byHalfSpan,
      double uRadius) {
    Slope slope = Slope.at(h, 2 * a, foot);
    double r = 1 / slope.curvaturePerMm();
    assertEquals(radius, r, 5e-7);
    assertEquals(byDepth, -r * r * slope.byDepth(), 5e-7);
    assertEquals(byHalfSpan, -r * r * 2 * slope.bySpan(), 5e-7);
    assertEquals(-1, -r * r * slope.byFoot(), 1e-12);
    double ofDepth = slope.byDepth() * uDepth;
    double ofSpan = slope.bySpan() * 2 * uHalfSpan;
    double u = Math.hypot(Math.hypot(ofDepth, ofSpan), slope.byFoot() * uFoot);
    assertEquals(uRadius, r * r * u, 5e-7);
  }

  @Provide
  Arbitrary<SetUps.Case> skewed() {
    return SetUps.cases(1);
  }

  /** The printed lines add up to the u, ν and k of the estimate, on any face. */
  @Property(tries = 200)
  void theBudgetAddsUpToTheEstimate(@ForAll("skewed") SetUps.Case c) {
    RadiusModel model = RadiusModel.of(c.setUp());
    long depth = Length.nm(c.depthMm());
    RadiusEstimate e = model.estimate(depth, c.scatterNm(), c.sampleCount());
    Budget budget = model.budget(depth, c.scatterNm(), c.sampleCount());
    Double radius = e.radiusMm();
    assertNotNull(radius);
    double u = e.standardUncertaintyPerMm() * radius * radius;
    assertEquals(1, budget.combined() / u, 1e-9);
    assertEquals(e.coverageFactor(), budget.coverageFactor(), 1e-9);
    assertEquals(1, budget.degreesOfFreedom() / e.degreesOfFreedom(), 1e-9);
  }
}
