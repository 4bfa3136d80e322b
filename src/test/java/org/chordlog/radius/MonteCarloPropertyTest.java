package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.LongRange;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;

/** JCGM 101:2008: drawn distributions against the formula over random set-ups. */
final class MonteCarloPropertyTest {
  private static final int TRIALS = 50_000;

  @Provide
  Arbitrary<SetUps.Case> straight() {
    return SetUps.cases(0);
  }

  @Provide
  Arbitrary<SetUps.Case> skewed() {
    return SetUps.cases(1);
  }

  /**
   * u within 3 % (1/√(2·trials) is 0.2 %; t with few degrees has the rest); the interval is no
   * wider than the formula's by more than 10 % (5 % seen, sums of t with 9 degrees), and never less
   * than 70 % of it: where one rectangle rules k is 1.65 instead of 2 (JCGM 101, 9.2.4).
   */
  @Property(tries = 40, shrinking = ShrinkingMode.OFF)
  void theFormulaHolds(@ForAll("straight") SetUps.Case c, @ForAll @LongRange(min = 0) long seed) {
    RadiusModel model = RadiusModel.of(c.setUp());
    long depthNm = Length.nm(c.depthMm());
    RadiusEstimate e = model.estimate(depthNm, c.scatterNm(), c.sampleCount());
    MonteCarloResult drawn =
        MonteCarlo.run(model, depthNm, c.scatterNm(), c.sampleCount(), TRIALS, seed);
    double u = e.standardUncertaintyPerMm();
    double inflation = Math.sqrt((c.sampleCount() - 1.0) / (c.sampleCount() - 3.0));
    double ratio = drawn.standardUncertaintyPerMm() / u;
    assertTrue(ratio > 0.97 && ratio < 1.03 * inflation, () -> "u ratio " + ratio);
    assertEquals(Math.abs(e.curvaturePerMm()), drawn.meanPerMm(), 0.03 * u);
    double width = (drawn.highPerMm() - drawn.lowPerMm()) / (2 * e.coverageFactor() * u);
    assertTrue(width > 0.7 && width < 1.1, () -> "width ratio " + width);
  }

  /** One way: the drawn interval reaches beyond the formula's by less than 0.5 u at either end. */
  @Property(tries = 40, shrinking = ShrinkingMode.OFF)
  void theFormulaCoversTheSkew(
      @ForAll("skewed") SetUps.Case c, @ForAll @LongRange(min = 0) long seed) {
    RadiusModel model = RadiusModel.of(c.setUp());
    long depthNm = Length.nm(c.depthMm());
    RadiusEstimate e = model.estimate(depthNm, c.scatterNm(), c.sampleCount());
    MonteCarloResult drawn =
        MonteCarlo.run(model, depthNm, c.scatterNm(), c.sampleCount(), TRIALS, seed);
    double u = e.standardUncertaintyPerMm();
    double half = e.coverageFactor() * u;
    double bend = Math.abs(e.curvaturePerMm());
    assertTrue(drawn.lowPerMm() > bend - half - 0.5 * u, () -> drawn + " against " + e);
    assertTrue(drawn.highPerMm() < bend + half + 0.5 * u, () -> drawn + " against " + e);
  }

  @Property(tries = 5)
  void theSameSeedGivesTheSameFigures(@ForAll("skewed") SetUps.Case c, @ForAll long seed) {
    RadiusModel model = RadiusModel.of(c.setUp());
    long depthNm = Length.nm(c.depthMm());
    assertEquals(
        MonteCarlo.run(model, depthNm, 1000, 10, 10_000, seed),
        MonteCarlo.run(model, depthNm, 1000, 10, 10_000, seed));
  }
}
