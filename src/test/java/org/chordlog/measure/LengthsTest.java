package org.chordlog.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LengthsTest {
  /** A length of fixed decimals has as many as one whose uncertainty supports them. */
  @ParameterizedTest
  @CsvSource({"0, 46 mm, 1.81 in", "1, 46.0 mm, 1.811 in", "3, 46.000 mm, 1.81102 in"})
  void anInchHasTwoMoreDecimals(int decimals, String mm, String inch) {
    assertEquals(mm, Lengths.MM.fixed(46, decimals));
    assertEquals(inch, Lengths.INCH.fixed(46, decimals));
    assertEquals(mm, Lengths.MM.text(Quantity.fixed(46, decimals)));
    assertEquals(inch, Lengths.INCH.text(Quantity.fixed(46, decimals)));
  }

  @Test
  void digitsThatAnUncertaintyDoesNotSupportAreRounded() {
    assertEquals("5000 mm", Lengths.MM.text(5001, 123));
    assertEquals("196.9 in", Lengths.INCH.text(5001, 123));
    assertEquals("170000 mm", Lengths.MM.text(166_667, 410_000));
  }
}
