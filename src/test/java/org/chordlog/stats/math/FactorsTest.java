package org.chordlog.stats.math;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.chordlog.measure.BadInput;
import org.chordlog.stats.Data;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Chart factors for n = 2 to 25. */
final class FactorsTest {
  static double[][] base() {
    return Data.rows("factors-base.csv");
  }

  static double[][] derived() {
    return Data.rows("factors-derived.csv");
  }

  static double[][] published() {
    return Data.rows("factors-published.csv");
  }

  /** Recomputed with 30-digit quadrature and gamma function (own computation, no publication). */
  @ParameterizedTest
  @MethodSource("base")
  void agreeWithLongArithmetic(double[] row) {
    Factors factors = Factors.of((int) row[0]);
    assertEquals(row[1], factors.d2(), 2e-12);
    assertEquals(row[2], factors.d3(), 2e-10);
    assertEquals(row[3], factors.c4(), 2e-14);
  }

  @ParameterizedTest
  @MethodSource("derived")
  void derivedOnesAgree(double[] row) {
    double[] own = derived(Factors.of((int) row[0]));
    for (int i = 0; i < own.length; i++) {
      assertEquals(row[i + 1], own[i], 6e-8, "column " + (i + 1));
    }
  }

  private static double[] derived(Factors f) {
    return new double[] {
      f.a(),
      f.a2(),
      f.a3(),
      f.b3(),
      f.b4(),
      f.b5(),
      f.b6(),
      f.d1Limit(),
      f.d2Limit(),
      f.d3Limit(),
      f.d4Limit(),
      f.e2(),
      f.e3()
    };
  }

  /**
   * ASTM MNL 7 / ISO 7870-2 table as printed in Montgomery, Appendix VI (n = 22 to 25 from memory);
   * some printed cells were made from rounded factors, hence 0.001.
   */
  @ParameterizedTest
  @MethodSource("published")
  void agreeWithThePrintedTable(double[] row) {
    Factors f = Factors.of((int) row[0]);
    double[] own = {
      f.a2(),
      f.a3(),
      f.c4(),
      f.b3(),
      f.b4(),
      f.b5(),
      f.b6(),
      f.d2(),
      f.d3(),
      f.d3Limit(),
      f.d4Limit()
    };
    for (int i = 0; i < own.length; i++) {
      assertEquals(row[i + 1], own[i], i == 2 ? 5.1e-5 : 1e-3, "column " + (i + 1));
    }
  }

  @Test
  void closedForms() {
    assertEquals(2 / Math.sqrt(Math.PI), Factors.of(2).d2(), 1e-14);
    assertEquals(3 / Math.sqrt(Math.PI), Factors.of(3).d2(), 1e-14);
    assertEquals(Math.sqrt(2 - 4 / Math.PI), Factors.of(2).d3(), 1e-13);
  }

  @Test
  void otherSizesAreRefused() {
    assertThrows(BadInput.class, () -> Factors.of(1));
    assertThrows(BadInput.class, () -> Factors.of(26));
  }
}
