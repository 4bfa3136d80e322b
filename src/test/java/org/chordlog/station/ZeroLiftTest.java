package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import org.chordlog.measure.Indicator;
import org.junit.jupiter.api.Test;

/** What free air says of a zero, less the zeros before it. */
final class ZeroLiftTest {
  private static final long MOST = 50_000;
  private static final ZeroLift FLAT = lift(5_000_000, 0);

  /** On a bend of 6 m, 200 mm between feet of no radius. */
  private static final ZeroLift BENT = lift(5_833_300, 833_300);

  private static ZeroLift lift(long pushedInNm, long shiftNm) {
    return new ZeroLift(7, 1, 1_000, pushedInNm, shiftNm, "5f3a");
  }

  private static long shift(long pushedInNm, boolean lifted, ZeroLift... before) {
    return ZeroLift.shiftNm(pushedInNm, List.of(before), lifted, MOST);
  }

  @Test
  void aBendIsNoFlat() {
    assertEquals(833_300, shift(5_833_300, true, FLAT));
    assertEquals(-833_300, shift(4_166_700, true, FLAT));
  }

  @Test
  void theSameFlatIsNeverAtOneValueExactly() {
    assertEquals(0, shift(5_050_000, true, FLAT));
    assertEquals(50_001, shift(5_050_001, true, FLAT));
  }

  @Test
  void nothingIsSaidOfTheFirst() {
    assertEquals(0, shift(5_833_300, true));
  }

  @Test
  void theFlatBeforeIsInNoDoubt() {
    assertEquals(0, shift(5_001_000, true, BENT, FLAT));
  }

  @Test
  void whatIsFoundAgainAfterALiftIsTheFlatNow() {
    assertEquals(0, shift(5_834_000, true, BENT, FLAT));
    ZeroLift again = lift(5_834_000, 0);
    assertEquals(0, shift(5_833_000, true, again, BENT, FLAT));
    assertEquals(-834_000, shift(5_000_000, true, again, BENT, lift(5_400_000, 0)));
  }

  @Test
  void withoutALiftItIsNoOtherWitness() {
    assertEquals(834_000, shift(5_834_000, false, BENT, FLAT));
    assertEquals(0, shift(5_001_000, false, FLAT));
  }

  @Test
  void itIsSaidInWords() {
    assertEquals(
        "The flat is 0.833 mm higher over free air than at the last zero: is this really the flat?",
        String.valueOf(BENT.doubt()));
    assertEquals(
        "The flat is 0.100 mm lower over free air than at the last zero: is this really the flat?",
        String.valueOf(lift(4_900_000, -100_000).doubt()));
    assertNull(FLAT.doubt());
  }

  @Test
  void theBoundGrowsWithTheIndicatorsError() {
    assertEquals(50_000, ZeroLift.mostNm(new Indicator(0.001, 0.003, 12.7)));
    assertEquals(60_000, ZeroLift.mostNm(new Indicator(0.01, 0.02, 12.7)));
  }

  @Test
  void isReadAsItWasWritten() {
    assertEquals(BENT, ZeroLift.of(BENT.line()));
    assertEquals("", ZeroLift.of("7 1 1000 5833300 833300").readAs());
  }
}
