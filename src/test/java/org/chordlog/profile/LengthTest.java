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
  private final LengthJoin.Sink<Integer> sink =
      new LengthJoin.Sink<>() {
        @Override
        public void placed(Integer depth, long lengthNm) {
          placed.add(depth + " at " + lengthNm);
        }

        @Override
        public void lost(Integer depth) {
          placed.add(depth + " lost");
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

  private LengthJoin<Integer> join(double delayMs) {
    return new LengthJoin<>(delayMs, sink);
  }

  @Test
  void aDepthWaitsForTheLengthBehindItAndIsInterpolated() {
    LengthJoin<Integer> join = join(10);
    join.length(100_000_000, 1_000_000);
    join.depth(1, 130_000_000);
    assertEquals(List.of(), placed);
    join.length(140_000_000, 5_000_000);
    assertEquals(List.of("1 at 3000000"), placed);
  }

  @Test
  void depthsThatWaitTooLongAreLostAndNothingIsInvented() {
    LengthJoin<Integer> join = join(0);
    join.length(0, 0);
    join.depth(1, 1_000_000_000L);
    join.depth(2, 3_000_000_001L);
    assertEquals(List.of("1 lost", "2 lost"), placed);
    join.length(3_100_000_000L, 7);
    join.depth(3, 3_050_000_000L);
    join.depth(4, 3_100_000_000L);
    assertEquals(List.of("1 lost", "2 lost", "3 lost", "4 at 7"), placed, "across the gap");
  }

  @Test
  void aDepthFromBeforeAllLengthsIsPassedOver() {
    LengthJoin<Integer> join = join(50);
    join.length(100_000_000, 1);
    join.length(200_000_000, 2);
    join.depth(1, 120_000_000);
    join.depth(2, 250_000_000);
    assertEquals(List.of("2 at 2"), placed);
  }

  @Test
  void ofLengthsThatAreHandedOverTogetherTheLastOneCounts() {
    LengthJoin<Integer> join = join(0);
    join.length(100_000_000, 1_000_000);
    join.length(200_000_000, 2_000_000);
    join.length(200_000_000, 3_000_000);
    join.length(150_000_000, 3_000_000);
    join.depth(1, 150_000_000);
    assertEquals(List.of("1 at 2000000"), placed);
  }

  @Test
  void whenNoLengthIsToComeWhatWaitsIsLost() {
    LengthJoin<Integer> join = join(0);
    join.depth(1, 100_000_000);
    join.loseAll();
    join.length(200_000_000, 2);
    assertEquals(List.of("1 lost"), placed);
  }

  @Test
  void aDelayBeyondBeliefIsRefused() {
    assertTrue(
        String.valueOf(assertThrows(BadInput.class, () -> join(201)).getMessage())
            .contains("delayMs"));
  }
}
