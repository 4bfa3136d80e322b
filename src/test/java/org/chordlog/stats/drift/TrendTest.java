package org.chordlog.stats.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.chordlog.stats.math.ChangePoint;
import org.chordlog.stats.math.MannKendall;
import org.chordlog.stats.math.Normal;
import org.chordlog.stats.math.TheilSen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Mann-Kendall, Theil-Sen and the least-squares line on published examples. */
final class TrendTest {
  private static double[] numbers(String text) {
    return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }

  /**
   * A course note of Holy Cross (read); EPA QA/G-9S, page 109 (read); Wisconsin administrative
   * code, Table A (read); EPA QA/G-9, Box 4-6 (memory); Hollander and Wolfe, Example 9.1 (memory).
   */
  @ParameterizedTest
  @CsvSource({
    "12.9 14.8 13.2 15.7 13.8 15.6 12.9 11 17.3 15.9 19 18.3 20.1 21.7, 54, 332.67, 2.9058",
    "10 10 10 5 10 20 18 17 15 24 15, 22, 155.33, 1.685",
    "100 50 85 75 50, -5, , ",
    "5 6 11 8 10, 6, , ",
    "1.26 1.27 1.12 1.16 1.03, -6, , "
  })
  void mannKendall(String values, long s, Double variance, Double z) {
    MannKendall test = MannKendall.of(numbers(values));
    assertEquals(s, test.s());
    if (variance != null) {
      assertEquals(variance, test.variance(), 5e-3);
      assertEquals(z, test.z(), 5e-4);
    }
  }

  @Test
  void mannKendallOneSidedP() {
    double[] y = numbers("12.9 14.8 13.2 15.7 13.8 15.6 12.9 11 17.3 15.9 19 18.3 20.1 21.7");
    assertEquals(0.0018, MannKendall.of(y).pValue() / 2, 5e-5, "as printed, one-sided");
  }

  /**
   * Upper tails P(S ≥ s) without ties as printed by Gilbert (1987), Table A18, and Hollander and
   * Wolfe (n = 4 and 5 from memory; n = 6 to 10 recomputed by the recursion).
   */
  @ParameterizedTest
  @CsvSource({
    "4, 2, 0.375, 5e-4",
    "4, 4, 0.167, 5e-4",
    "4, 6, 0.042, 5e-4",
    "5, 4, 0.242, 5e-4",
    "5, 6, 0.117, 5e-4",
    "5, 8, 0.042, 5e-4",
    "5, 10, 0.0083, 5e-5",
    "6, 5, 0.2347, 1e-4",
    "6, 7, 0.1361, 1e-4",
    "6, 9, 0.0681, 1e-4",
    "6, 11, 0.0278, 1e-4",
    "8, 8, 0.1994, 1e-4",
    "8, 12, 0.0894, 1e-4",
    "8, 16, 0.0305, 1e-4",
    "10, 11, 0.1904, 1e-4",
    "10, 15, 0.1082, 1e-4",
    "10, 19, 0.0542, 1e-4",
    "10, 23, 0.0233, 1e-4"
  })
  void mannKendallExactTail(int n, int s, double published, double tolerance) {
    assertEquals(published, MannKendall.upperTail(s, n), tolerance);
  }

  /** Hollander and Wolfe, Example 9.1 (memory): one-sided exact P = 0.117. */
  @Test
  void fewValuesWithoutTiesGetTheExactP() {
    assertEquals(0.117, MannKendall.of(numbers("1.26 1.27 1.12 1.16 1.03")).pValue() / 2, 5e-4);
    assertEquals(1, MannKendall.of(numbers("2 4 1 3")).pValue(), "S = 0");
    MannKendall tied = MannKendall.of(numbers("1 1 2 3 4 5"));
    assertEquals(2 * Normal.below(-tied.z()), tied.pValue(), 1e-15, "ties: approximation");
  }

  /** Sen (1968), JASA 63, 1379 (memory): slope 4, interval 3.71 to 4.375 at 93 %. */
  @Test
  void theilSenOfSen() {
    TheilSen sen = TheilSen.of(numbers("1 2 3 4 10 12 18"), numbers("9 15 19 20 45 55 78"), 0.93);
    assertEquals(4, sen.slope(), 1e-12);
    assertEquals(3.71, sen.lower(), 5e-3);
    assertEquals(4.375, sen.upper(), 1e-9);
  }

  /** Gilbert (1987), section 16.5 (memory, replicate times); the data as recalled give 5.5. */
  @Test
  void equalTimesAreLeftOut() {
    double[] t = numbers("1 1 1 2 3 3 4 5");
    assertEquals(5.5, TheilSen.of(t, numbers("10 22 21 30 22 30 40 40"), 0.95).slope(), 1e-12);
  }

  @Test
  void changePointIsFound() {
    double[] y = new double[40];
    Arrays.setAll(y, i -> Math.sin(i * 1.7) + (i >= 25 ? 4 : 0));
    ChangePoint change = ChangePoint.of(y);
    assertEquals(25, change.at());
    assertTrue(change.pValue() < 1e-4);
    assertEquals(4, change.step(y), 0.3);
  }
}
