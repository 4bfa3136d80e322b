package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

final class ArcPathTest {
  private static ArcPath path(double length, int arcs, DoubleUnaryOperator curvature) {
    double[] lengths = new double[arcs];
    double[] curvatures = new double[arcs];
    Arrays.fill(lengths, length / arcs);
    for (int i = 0; i < arcs; i++) {
      curvatures[i] = curvature.applyAsDouble((i + 0.5) * length / arcs);
    }
    return new ArcPath(lengths, curvatures);
  }

  /** R sin(S/R), R(1 − cos(S/R)). */
  @Test
  void anArcIsExact() {
    ArcPath path = path(3000, 600, s -> 1 / 1800.0);
    assertEquals(1791.73432, path.x[600], 5e-6);
    assertEquals(1972.30239, path.y[600], 5e-6);
  }

  /** A clothoid from 0 to 1/1800 over 3,000 mm: Fresnel integrals say 2798.25830, 792.899722. */
  @Test
  void aClothoidNearlySo() {
    ArcPath path = path(3000, 600, s -> s / 3000 / 1800);
    assertEquals(2798.25799, path.x[600], 5e-6);
    assertEquals(792.900801, path.y[600], 5e-7);
    ArcPath finer = path(3000, 60_000, s -> s / 3000 / 1800);
    assertEquals(2798.25830, finer.x[60_000], 2e-5);
    assertEquals(792.899722, finer.y[60_000], 2e-5);
  }

  /**
   * A ring whose curvature varies: 1/1800 + 1e-6 + 3e-6 cos(2πs/S − 0.5) + 2e-6 sin(6πs/S). No
   * published source: integrated with another program.
   */
  @Test
  void aRingThatDoesNotClose() {
    double length = 2 * Math.PI * 1800;
    ArcPath path =
        path(
            length,
            20_000,
            s ->
                1 / 1800.0
                    + 1e-6
                    + 3e-6 * Math.cos(2 * Math.PI * s / length - 0.5)
                    + 2e-6 * Math.sin(6 * Math.PI * s / length));
    assertEquals(-6.31448052, path.x[20_000], 1e-5);
    assertEquals(-14.7102005, path.y[20_000], 1e-5);
    assertEquals(-0.0113097336, 2 * Math.PI - path.heading[20_000], 1e-9);
  }
}
