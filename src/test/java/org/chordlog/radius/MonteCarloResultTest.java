package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.chordlog.measure.RadiusEstimate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * JCGM 101:2008, 8.1: with n digits of u held significant, u = c·10^l, the ends may lie 10^l/2 off.
 */
final class MonteCarloResultTest {
  @ParameterizedTest
  @CsvSource({
    "9.9e-6, 0.05, 1, true",
    "9.9e-6, 0.06, 1, false",
    "9.9e-6, 0.006, 2, false",
    "1.1e-6, 0.45, 1, true",
    "1.1e-6, 0.46, 1, false",
    "1.1e-6, 0.045, 2, true"
  })
  void confirmsByTheDigitsOfU(double u, double apart, int digits, boolean confirmed) {
    double lower = 1 / (1e-3 + 2 * u);
    RadiusEstimate e = new RadiusEstimate(1000.0, lower, 1 / (1e-3 - 2 * u), 1e-3, u, 2, 1e6);
    MonteCarloResult drawn =
        new MonteCarloResult(1, 1, 1e-3, u, 1e-3 - 2 * u, 1e-3 + (2 + apart) * u);
    assertEquals(apart, drawn.endsApart(e), 1e-9);
    assertEquals(confirmed, drawn.confirms(e, digits));
  }
}
