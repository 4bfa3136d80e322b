package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Euler's theorem (1760, any text on differential geometry): identities and the tube table. */
final class SkewTest {
  private static final double ALONG = 1 / 1025.0;
  private static final double ACROSS = 1 / 25.0;

  private static double at(double degrees) {
    return Skew.normalCurvature(ALONG, ACROSS, degrees);
  }

  @Test
  void identities() {
    assertEquals(ALONG, at(0));
    assertEquals(ACROSS, at(90), 1e-16);
    assertEquals((ALONG + ACROSS) / 2, at(45), 1e-16);
    assertEquals(ALONG + ACROSS, at(20) + at(110), 1e-16);
    assertEquals(0.01, Skew.normalCurvature(0.01, 0.01, 33), 1e-17);
  }

  /** A straight cylinder of radius 10: at 30° 40, at 45° 20. */
  @Test
  void cylinder() {
    assertEquals(40, 1 / Skew.normalCurvature(0, 0.1, 30), 1e-12);
    assertEquals(20, 1 / Skew.normalCurvature(0, 0.1, 45), 1e-12);
  }

  /** Outer crest of a bent tube, own computation in double. */
  @ParameterizedTest
  @CsvSource({
    "1000, 25, 0.5, 1021.88723", "1000, 25, 1, 1012.66227", "1000, 25, 5, 786.13643",
    "1000, 50, 1, 1043.64241", "1000, 50, 3, 995.46726", "500, 30, 2, 519.45528",
    "500, 30, 5, 470.44118"
  })
  void tubes(double axis, double tube, double degrees, double seen) {
    double curvature = Skew.normalCurvature(1 / (axis + tube), 1 / tube, degrees);
    assertEquals(seen, 1 / curvature, 5e-6);
  }

  @Test
  void theOperatorIsToldInPlainWords() {
    assertEquals(
        "Turned 1° out of the bend plane the bridge would read about 1.2 % too tight.",
        Skew.sentence(ALONG, ACROSS, 1));
    assertEquals(
        "Turned 1° out of the bend plane the bridge would read about 1.2 % too slack.",
        Skew.sentence(-1 / 975.0, ACROSS, 1));
    assertEquals(
        "Turned 20° out of the bend plane the bridge would show this bend as flat or as bent the"
            + " other way.",
        Skew.sentence(-1 / 975.0, ACROSS, 20));
  }

  /** Root mean square of sin²φ by Simpson's rule, on both branches of the formula. */
  @ParameterizedTest
  @CsvSource({"0.01", "1", "5.7", "5.8", "30", "45"})
  void rms(double limit) {
    int n = 2000;
    double sum = 0;
    for (int i = 0; i <= n; i++) {
      int weight = i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2;
      sum += weight * Math.pow(Math.sin(Math.toRadians(limit) * i / n), 4);
    }
    assertEquals(1, Skew.rmsSineSquared(limit) / Math.sqrt(sum / (3.0 * n)), 1e-7);
  }
}
