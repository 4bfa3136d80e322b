package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class EdgeShapeTest {
  /** No published source: closed form, recomputed with another program in double precision. */
  @ParameterizedTest
  @CsvSource({
    "-100, 0, 0.0075, 0.03",
    "-50, 0.125, 0.14, 0.184583333",
    "0, 0.5, 0.5, 0.5",
    "50, 0.875, 0.86, 0.815416667",
    "90, 0.995, 0.982222222, 0.952361111",
    "100, 1, 0.9925, 0.97",
    "130, 1, 1, 0.99625",
    "160, 1, 1, 1"
  })
  void shareOfAStep(double beyond, double sharp, double rise60, double rise120) {
    assertEquals(sharp, EdgeShape.share(beyond, 100, 0), 5e-10);
    assertEquals(rise60, EdgeShape.share(beyond, 100, 60), 5e-10);
    assertEquals(rise120, EdgeShape.share(beyond, 100, 120), 5e-10);
  }

  /** The triangle's distribution function is 0.1 and 0.9 at ∓a(1 − √0.2). */
  @Test
  void tenToNinetyPercent() {
    assertEquals(0.1, EdgeShape.share(-55.2786405, 100, 0), 1e-9);
    assertEquals(0.9, EdgeShape.share(55.2786405, 100, 0), 1e-9);
  }

  /** Against the triangle summed over the ramp in small steps. */
  @Property(tries = 60)
  void agreesWithTheSum(
      @ForAll @DoubleRange(min = -400, max = 400) double beyond,
      @ForAll @DoubleRange(min = 20, max = 250) double half,
      @ForAll @DoubleRange(min = 1, max = 300) double rise) {
    double sum = 0;
    int steps = 4000;
    for (int i = 0; i < steps; i++) {
      double u = -half + 2 * half * (i + 0.5) / steps;
      double ramp = Math.max(0, Math.min(1, (beyond + u) / rise + 0.5));
      sum += (half - Math.abs(u)) / half / half * ramp * 2 * half / steps;
    }
    assertEquals(sum, EdgeShape.share(beyond, half, rise), 1e-5);
  }
}
