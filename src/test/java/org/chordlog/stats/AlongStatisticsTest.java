package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.ControlState;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.SignalKey;
import org.junit.jupiter.api.Test;

/** Range and trend along pieces, charted piece by piece. */
final class AlongStatisticsTest {
  private final Random random = new Random(15);

  private AlongStatistics.Piece piece(int number, double range, double trend) {
    return new AlongStatistics.Piece(
        number,
        number,
        1_000_000L * number,
        Math.abs(range + 0.1 * random.nextGaussian()),
        trend + 0.05 * random.nextGaussian(),
        0.02);
  }

  private AlongStatistics of(int pieces) {
    AlongStatistics along = new AlongStatistics();
    for (int i = 1; i <= pieces; i++) {
      along.add(piece(i, 0.4, 0));
    }
    return along;
  }

  @Test
  void aRangeThatGrowsIsNotInControlAndTheTrendStillIs() {
    AlongStatistics along = of(40);
    assertTrue(along.control(AlongMeasure.RANGE).state() instanceof ControlState.InControl);
    for (int i = 41; i <= 55; i++) {
      along.add(piece(i, 0.8, 0));
    }
    assertTrue(along.control(AlongMeasure.RANGE).notInControl());
    assertFalse(along.control(AlongMeasure.TREND).notInControl());
    assertTrue(
        along.chart(AlongMeasure.RANGE, ChartKind.INDIVIDUALS).points().get(54).signalling());
  }

  /** An answer to one measure says nothing of the other, and goes with no checkpoint. */
  @Test
  void aSignalWhoseCauseWasFoundHoldsTheVerdictOfItsMeasureNoLonger() {
    AlongStatistics along = of(40);
    for (int i = 41; i <= 46; i++) {
      along.add(piece(i, 2, 1));
    }
    Set<SignalKey> found = new HashSet<>();
    for (ChartKind kind : along.kinds(AlongMeasure.RANGE)) {
      for (long id = 41; id <= 46; id++) {
        found.add(new SignalKey(kind, id));
      }
    }
    along.answer(AlongMeasure.RANGE, found);
    assertFalse(along.control(AlongMeasure.RANGE).notInControl());
    assertTrue(along.control(AlongMeasure.RANGE).history().get(0).answered());
    assertTrue(along.control(AlongMeasure.TREND).notInControl());
    assertTrue(
        AlongStatistics.restore(along.checkpoint()).control(AlongMeasure.RANGE).notInControl());
  }

  /** They began with the length of the first part. */
  @Test
  void aCheckpointOfAFormerReleaseIsRefused() {
    byte[] former = new byte[40];
    former[3] = 16;
    assertThrows(BadInput.class, () -> AlongStatistics.restore(former));
  }

  @Test
  void aTrendToEitherSideIsNotInControl() {
    for (double way : List.of(-0.3, 0.3)) {
      AlongStatistics along = of(40);
      for (int i = 41; i <= 52; i++) {
        along.add(piece(i, 0.4, way));
      }
      assertTrue(along.control(AlongMeasure.TREND).notInControl());
      assertFalse(along.control(AlongMeasure.RANGE).notInControl());
    }
  }

  /** Three sigma below a mean of 0.2 with a spread of 0.1 is below zero. */
  @Test
  void aLimitThatARangeCantReachIsNotDrawn() {
    AlongStatistics along = new AlongStatistics();
    for (int i = 1; i <= 30; i++) {
      along.add(piece(i, 0.2, 0));
    }
    ChartSnapshot range = along.chart(AlongMeasure.RANGE, ChartKind.INDIVIDUALS);
    for (LimitSpan span : range.limits()) {
      assertNull(span.lower());
      assertTrue(span.upper() != null && span.upper() > span.centre());
    }
    LimitSpan trend =
        along.chart(AlongMeasure.TREND, ChartKind.INDIVIDUALS).limits().stream()
            .findFirst()
            .orElseThrow();
    assertTrue(trend.lower() != null && trend.lower() < 0, trend::toString);
  }

  @Test
  void aCorrectionStartsAnewAndAnExcludedPieceDoesNotCount() {
    AlongStatistics along = new AlongStatistics();
    assertTrue(along.exclude(2, "jammed"));
    for (int i = 1; i <= 40; i++) {
      along.add(i == 2 ? piece(i, 9, 9) : piece(i, 0.4, 0));
    }
    assertFalse(along.exclude(3, "too late"));
    assertTrue(along.chart(AlongMeasure.RANGE, ChartKind.INDIVIDUALS).points().get(1).excluded());
    assertFalse(along.control(AlongMeasure.RANGE).notInControl());
    along.happened(
        new JobEvent(
            1,
            1,
            "rolls 1",
            JobEvent.Kind.CORRECTION,
            40,
            new JobEvent.Content(1.0, 1.1, "", ""),
            new Recorded(1, "tester")));
    along.add(piece(41, 0.8, 0));
    assertEquals(1, along.control(AlongMeasure.RANGE).state().points());
  }

  @Test
  void continuesFromItsCheckpointToTheSameDigits() {
    AlongStatistics whole = of(35);
    AlongStatistics again = AlongStatistics.restore(whole.checkpoint());
    for (int i = 36; i <= 70; i++) {
      AlongStatistics.Piece next = piece(i, 0.5, 0.01);
      whole.add(next);
      again.add(next);
    }
    assertArrayEquals(whole.checkpoint(), again.checkpoint());
    assertEquals(
        whole.chart(AlongMeasure.TREND, ChartKind.INDIVIDUALS),
        again.chart(AlongMeasure.TREND, ChartKind.INDIVIDUALS));
    assertEquals(70, again.count());
  }
}
