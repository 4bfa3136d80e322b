package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.chordlog.stats.math.RangeIntegrals;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class WindowsTest {
  private static final int DRAWS = 4000;

  /**
   * Variance and degrees of freedom of the second differences of white noise: (tr A)²/tr A² of A =
   * D'D is 2.36, 5.42, 11.6 and 23.9 (no published source: summed with another program); 18m/35 is
   * a little lower, on the safe side.
   */
  @ParameterizedTest
  @CsvSource({"6, 2.05714286", "12, 5.14285714", "24, 11.3142857", "48, 23.6571429"})
  void scatterOfWhiteNoise(int n, double degrees) {
    Random random = new Random(n);
    double mean = 0;
    for (int i = 0; i < DRAWS; i++) {
      double[] values = new double[n];
      for (int k = 0; k < n; k++) {
        values[k] = random.nextGaussian();
      }
      double[] squared = WindowScatter.of(values, new boolean[n]);
      mean += squared[0] / DRAWS;
      assertEquals(degrees, squared[1], 1e-7);
    }
    double error = Math.sqrt(2 / degrees / DRAWS);
    assertTrue(Math.abs(mean - 1) < 4 * error, mean + " ± " + error);
  }

  @Test
  void aTrendLeavesNone() {
    double[] values = new double[20];
    for (int i = 0; i < values.length; i++) {
      values[i] = 3 + 0.25 * i;
    }
    assertEquals(0, WindowScatter.of(values, new boolean[20])[0], 1e-24);
  }

  @Test
  void markedOnesAreLeftOut() {
    double[] values = {1, 2, 1, 2, 50, 2, 1, 2, 1, 2};
    boolean[] marked = new boolean[10];
    marked[4] = true;
    double[] found = WindowScatter.of(values, marked);
    assertEquals(4 / 6.0, found[0], 1e-12);
    assertEquals(5 * 18 / 35.0, found[1], 1e-12);
  }

  /** Expected range of normal values; 2.534 and 3.258 are d2 in ISO 7870-2. */
  @ParameterizedTest
  @CsvSource({"6, 2.53441272", "12, 3.25845528", "24, 3.89534815", "48, 4.46624176"})
  void rangeThatNoiseAloneMakes(int n, double expected) {
    assertEquals(expected, RangeIntegrals.mean(n), 1e-8);
  }
}
