package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Counts to lengths, and depths with lengths of another link. */
final class LengthTest {
  private final List<String> placed = new ArrayList<>();
  private final LengthJoin.Sink sink =
      new LengthJoin.Sink() {
        @Override
        public void placed(long sequence, long nanos, long lengthNm, long depthNm) {
          placed.add(sequence + " at " + lengthNm);
        }

        @Override
        public void lost(long nanos) {
          placed.add("lost");
        }
      };

  @ParameterizedTest
  @ValueSource(ints = {16, 32})
  void aCounterThatStartsOverGoesOn(int bits) {
    CountLength length = new CountLength(new CountScale(0.1, false, bits));
    long turn = 1L << bits;
    assertEquals((turn - 2) * 100_000, length.lengthNm(turn - 2));
    assertEquals((turn + 3) * 100_000, length.lengthNm(3));
    assertEquals((turn - 1) * 100_000, length.lengthNm(turn - 1));
  }

  @Test
  void reversedCountsDown() {
    CountLength length = new CountLength(new CountScale(0.5, true, 0));
    assertEquals(-5_000_000, length.lengthNm(10));
    assertEquals(5_000_000, length.lengthNm(-10));
  }

  @Test
  void scaleFromAPieceOfKnownLength() {
    assertEquals(0.1002, CountScale.calibrated(6012, -60_000), 1e-12);
    assertThrows(BadInput.class, () -> CountScale.calibrated(6000, 0));
    assertThrows(BadInput.class, () -> new CountScale(0.1, false, 24));
    assertThrows(BadInput.class, () -> new CountScale(0, false, 16));
  }

  @Test
  void aDepthWaitsForTheLengthBehindItAndIsInterpolated() {
    LengthJoin join = new LengthJoin(10);
    join.length(100_000_000, 1_000_000, sink);
    join.depth(1, 130_000_000, 2_780_000, sink);
    assertEquals(List.of(), placed);
    join.length(140_000_000, 5_000_000, sink);
    assertEquals(List.of("1 at 3000000"), placed);
  }

  @Test
  void aDepthThatWaitsTooLongIsLostAndNothingIsInvented() {
    LengthJoin join = new LengthJoin(0);
    join.length(0, 0, sink);
    join.depth(1, 1_000_000_000L, 0, sink);
    join.depth(2, 3_000_000_001L, 0, sink);
    assertEquals(List.of("lost"), placed);
    join.length(3_100_000_000L, 7, sink);
    join.depth(3, 3_100_000_000L, 0, sink);
    assertEquals(List.of("lost", "3 at 7"), placed);
  }

  @Test
  void aDepthFromBeforeAllLengthsIsLost() {
    LengthJoin join = new LengthJoin(50);
    join.length(100_000_000, 1, sink);
    join.length(200_000_000, 2, sink);
    join.depth(1, 120_000_000, 0, sink);
    assertEquals(List.of("lost"), placed);
  }

  @Test
  void aDelayBeyondBeliefIsRefused() {
    assertTrue(
        String.valueOf(assertThrows(BadInput.class, () -> new LengthJoin(201)).getMessage())
            .contains("delayMs"));
  }
}
