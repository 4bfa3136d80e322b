package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class TransferTest {
  /** No published source: closed form sinc², recomputed with another program. */
  @ParameterizedTest
  @CsvSource({
    "100, 0.0364756261, 0.405284735, 0.901261045, 0.974542993",
    "200, 0.0273567196, 0, 0.650559974, 0.901261045",
    "500, 0.00145902504, 0.0162113894, 0.0164104087, 0.501434358",
    "1000, 0.00109426878, 0, 0.0143324649, 0.0164104087"
  })
  void shareOfAWave(double span, double at60, double at100, double at90Turn, double at180Turn) {
    assertEquals(at60, Transfer.share(span / 2, 60), 1e-9);
    assertEquals(at100, Transfer.share(span / 2, 100), 1e-9);
    assertEquals(at90Turn, Transfer.share(span / 2, 282.743338823), 1e-9);
    assertEquals(at180Turn, Transfer.share(span / 2, 565.486677646), 1e-9);
  }

  @Test
  void halfAndNineTenthsAndATenth() {
    assertEquals(0.5, Transfer.share(0.442946471, 1), 1e-8);
    assertEquals(0.9, Transfer.share(0.178013143, 1), 1e-8);
    assertEquals(0.1, Transfer.share(0.738026435, 1), 1e-8);
  }

  /** The triangle summed over a wave. */
  @Test
  void agreesWithTheSum() {
    double half = 100;
    double wavelength = 337;
    double sum = 0;
    int steps = 20_000;
    for (int i = 0; i < steps; i++) {
      double u = -half + 2 * half * (i + 0.5) / steps;
      sum +=
          (half - Math.abs(u))
              / half
              / half
              * Math.cos(2 * Math.PI * u / wavelength)
              * 2
              * half
              / steps;
    }
    assertEquals(sum, Transfer.share(half, wavelength), 1e-7);
  }
}
