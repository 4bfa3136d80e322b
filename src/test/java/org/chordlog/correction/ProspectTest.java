package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.Advice.Prospect;
import org.junit.jupiter.api.Test;

/** What a correction is said to do, with a gain that is known to ± 30 %. */
final class ProspectTest {
  private static final GainPrior ROUGH = new GainPrior(45 * Bench.UNIT, 13.5 * Bench.UNIT);

  private static Correct after(double permil) {
    Bench bench = new Bench(Bench.dial(ROUGH)).job("A").pieces(permil);
    return assertInstanceOf(Correct.class, bench.advice());
  }

  /** By drawing level, gain, move and piece a million times each: 0.1372 ± 0.0003. */
  @Test
  void theGainsUncertaintyIsInWhatIsOutAfterwards() {
    assertEquals(0.1372, after(-11).prospect().outAfter(), 0.002);
  }

  /** Half the curvature is missing: no single move by a rough gain hits ± 7 permil. */
  @Test
  void afterALongMoveMostPiecesAreStillOut() {
    Prospect prospect = after(-500).prospect();
    assertTrue(prospect.outAfter() > 0.9, prospect::toString);
    assertTrue(prospect.outAfter() < prospect.outBefore(), prospect::toString);
  }

  /** A permil of curvature is R²/R_target permil of radius: four times as much at twice R. */
  @Test
  void farFromTheTargetTheLevelIsAsUncertainAsItsRadiusIs() {
    LevelEstimate far = LevelEstimate.of(Bench.AIM, -500, 2);
    assertEquals(3600, far.radiusMm(), 1e-9);
    double bySlope = (Bench.AIM.radiusMm(-500.001) - Bench.AIM.radiusMm(-499.999)) / 0.002;
    assertEquals(2 * bySlope, far.standardUncertaintyMm(), 1e-6);
    assertNotNull(after(-500).level());
  }
}
