package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Indicator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ZeroEvaluationTest {
  private static final long TOLERANCE = ZeroEvaluation.stillnessNm(new Indicator(0.01, 0.02, 25));

  /** GUM (JCGM 100:2008) 4.4.3, from memory: mean 100.14, s 1.489; here as micrometres. */
  @Test
  void meanAndScatterAreThoseOfTheTwentyTemperatures() {
    double[] t = {
      96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
      100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72
    };
    long[] nm = new long[t.length];
    for (int i = 0; i < t.length; i++) {
      nm[i] = Math.round(t[i] * 1000);
    }
    assertEquals(new ZeroEvaluation(100_145, 1_489, 20), ZeroEvaluation.of(nm, TOLERANCE, 5));
  }

  @Test
  void aSumThatWouldOverflowIsStillExact() {
    long big = Long.MAX_VALUE / 2;
    assertEquals(big + 1, ZeroEvaluation.of(new long[] {big, big + 1, big + 2}, 2, 3).valueNm());
  }

  /**
   * Noise of half a step to two steps, 20 values at the step of the indicator, 2,000 tries each.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 1.5, 2})
  void whatACaptureTakesIsStill(double steps) {
    Random random = new Random(17);
    int refused = 0;
    for (int i = 0; i < 2_000; i++) {
      try {
        assertEquals(20, ZeroEvaluation.of(noise(random, steps, 0), TOLERANCE, 5).sampleCount());
      } catch (BadInput e) {
        refused++;
      }
    }
    assertTrue(refused < 20, refused + " of 2,000 refused");
  }

  private static long[] noise(Random random, double steps, double stepsPerSample) {
    long[] values = new long[20];
    for (int i = 0; i < values.length; i++) {
      values[i] = 10_000 * Math.round(steps * random.nextGaussian() + stepsPerSample * i);
    }
    return values;
  }

  @Test
  void noiseThatACaptureDoesNotTakeIsCalledNoise() {
    long[] noisy = noise(new Random(3), 6, 0);
    BadInput refusal = assertThrows(BadInput.class, () -> ZeroEvaluation.of(noisy, TOLERANCE, 5));
    assertTrue(refusal.toString().contains("values scatter by a standard deviation of"));
  }

  @Test
  void aPlungerThatMovesUnderNoiseIsCalledMoving() {
    long[] moving = noise(new Random(3), 1, 0.5);
    BadInput refusal = assertThrows(BadInput.class, () -> ZeroEvaluation.of(moving, TOLERANCE, 5));
    assertTrue(refusal.toString().contains("the plunger moves"), refusal.toString());
  }

  @Test
  void aMovingPlungerIsRefusedWithItsSpread() {
    long[] moving = {0, 10_000, 20_000, 30_000, 40_000};
    BadInput refusal = assertThrows(BadInput.class, () -> ZeroEvaluation.of(moving, TOLERANCE, 3));
    assertTrue(refusal.toString().contains("zero can't be taken: the plunger moves, by 0.04 mm; "));
  }

  @Test
  void tooFewSamplesAreRefused() {
    assertThrows(BadInput.class, () -> ZeroEvaluation.of(new long[] {1, 1}, TOLERANCE, 3));
    assertThrows(BadInput.class, () -> ZeroEvaluation.of(new long[0], TOLERANCE, 0));
  }
}
