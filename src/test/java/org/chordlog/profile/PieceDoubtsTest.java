package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.profile.Refused.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What gives no result is refused with its reason, and what is doubtful is marked. */
final class PieceDoubtsTest extends PieceEvaluations {

  @ParameterizedTest
  @CsvSource({"190, PIECE_TOO_SHORT", "560, NO_FULL_BEND"})
  void whatIsTooShortIsRefused(double length, Reason reason) {
    Streams stream = Streams.usual().piece(length, Streams.bent(length, length / 2.5, 40, 1800));
    Refused refused = Streams.refused(Streams.evaluated(stream.go(length + 300, 100).only()));
    assertEquals(reason, refused.reason(), refused.detail().toString());
    if (reason == Reason.PIECE_TOO_SHORT) {
      assertTrue(
          refused.detail().toString().contains("a span of 89 mm"), refused.detail().toString());
    }
  }

  @Test
  void aStraightPieceAndOneBentTheOtherWay() {
    assertEquals(Reason.NO_BEND, Streams.refused(outcome(s -> 0)).reason());
    assertEquals(Reason.WRONG_FACE, Streams.refused(outcome(s -> -HOOP.applyAsDouble(s))).reason());
  }

  @Test
  void thePlungerAtTheEndOfItsTravel() {
    TrackSettings shortTravel =
        new TrackSettings(
            new TrackSettings.Feed(LengthSource.CHANNEL, false, 400),
            new TrackSettings.Gauge(false, null, 1000, 7_780_000, Streams.SPAN),
            KnownLengths.NONE);
    Streams stream = new Streams(shortTravel).piece(3000, HOOP);
    Refused refused = Streams.refused(Streams.evaluated(stream.go(3300, 100).only()));
    assertEquals(Reason.OUTSIDE_TRAVEL, refused.reason());
  }

  @Test
  void aFrozenValueIsSaid() {
    Streams stream = Streams.usual().piece(3000, HOOP).go(1000, 100);
    for (int i = 0; i < 500; i++) {
      stream.seconds += 0.02;
      stream.placeMm += 2;
      stream.value(2.777);
    }
    PieceResult result = Streams.measured(Streams.evaluated(stream.go(3300, 100).only()));
    assertEquals(List.of(PieceMark.Kind.UNCHANGED), marks(result));
    assertEquals(1000, result.marks().get(0).amount(), 4);
  }

  @Test
  void emptyBinsAreSaid() {
    Streams stream = Streams.usual().piece(3000, HOOP).go(700, 100);
    for (int i = 0; i < 20; i++) {
      stream.skip(30, 100).go(stream.placeMm + 30, 100);
    }
    PieceResult result = Streams.measured(Streams.evaluated(stream.go(3300, 100).only()));
    assertTrue(marks(result).contains(PieceMark.Kind.SPARSE), result.marks().toString());
    assertEquals(1800, Objects.requireNonNull(result.mean().radius().radiusMm()), 0.1);
  }

  @Test
  void valuesCoarserThanTheBridgeAreSaid() {
    Streams stream = Streams.usual().piece(3000, HOOP);
    stream.rate = 5;
    stream.rest(2);
    PieceResult result = Streams.measured(Streams.evaluated(stream.go(3300, 200).only()));
    assertTrue(marks(result).contains(PieceMark.Kind.COARSE), result.marks().toString());
    assertEquals(1800, Objects.requireNonNull(result.mean().radius().radiusMm()), 0.2);
  }

  @Test
  void aTightNoseIsSaidAndNotTrimmed() {
    PieceResult result =
        result(s -> HOOP.applyAsDouble(s) * (1 + 0.01 * Math.exp(-(s - 430) / 40)));
    assertTrue(marks(result).contains(PieceMark.Kind.START_UNEVEN), result.marks().toString());
  }

  @Test
  void withAStatedFeedAStopIsRefused() {
    KnownLengths known = new KnownLengths(3000.0, null, null, null, null);
    PieceEvaluation evaluation = new PieceEvaluation(Streams.settings(LengthSource.SPEED, known));
    Streams steady = new Streams(Streams.track(LengthSource.SPEED, known)).piece(3000, HOOP);
    PieceResult result = Streams.measured(evaluation.of(steady.go(3300, 100).only()));
    assertEquals(List.of(PieceMark.Kind.STATED_FEED), marks(result));
    assertEquals(1800, Objects.requireNonNull(result.mean().radius().radiusMm()), 0.1);
    Part longer = Part.whole(3200);
    Refused refused = Streams.refused(evaluation.of(steady.only().profile(), longer));
    assertEquals(Reason.NO_LENGTH, refused.reason());
    assertEquals(
        Reason.NO_LENGTH,
        Streams.refused(
                new PieceEvaluation(Streams.settings(LengthSource.SPEED, KnownLengths.NONE))
                    .of(steady.only()))
            .reason());
  }

  @Test
  void withoutAnyLengthOnlyAMeanByTimeIsTold() {
    Streams stream = Streams.usual().piece(3000, HOOP);
    PieceEvaluation evaluation =
        new PieceEvaluation(Streams.settings(LengthSource.NONE, KnownLengths.NONE));
    Refused refused = Streams.refused(evaluation.of(stream.go(3300, 100).only()));
    assertEquals(Reason.NO_LENGTH, refused.reason());
    assertTrue(refused.detail().toString().contains("2.77"), refused.detail().toString());
  }

  @Test
  void aTouchLongerThanAPieceWithoutAJointIsNotTold() {
    KnownLengths known = new KnownLengths(2000.0, null, null, null, null);
    Streams stream = Streams.usual().piece(3000, HOOP);
    PieceEvaluation evaluation = new PieceEvaluation(Streams.settings(LengthSource.CHANNEL, known));
    assertEquals(
        Reason.PIECES_NOT_TOLD,
        Streams.refused(evaluation.of(stream.go(3300, 100).only())).reason());
  }

  @Test
  void aLengthOffByMoreThanTwoPercentIsDoubted() {
    KnownLengths known = new KnownLengths(3100.0, null, null, null, null);
    Streams stream = Streams.usual().piece(3000, HOOP);
    PieceResult result =
        Streams.measured(
            new PieceEvaluation(Streams.settings(LengthSource.CHANNEL, known))
                .of(stream.go(3300, 100).only()));
    assertEquals(List.of(PieceMark.Kind.LENGTH_DOUBTFUL), marks(result));
  }

  @Test
  void twoPassesThatAgreeAreSaidToHaveChangedNothing() {
    Streams stream = Streams.usual().piece(3000, HOOP).go(2900, 100).go(100, 100).go(3300, 100);
    PieceResult result = Streams.measured(Streams.evaluated(stream.only()));
    assertTrue(marks(result).contains(PieceMark.Kind.NO_CHANGE), result.marks().toString());
    Streams bent = Streams.usual().piece(3000, Streams.bent(3000, 280, 80, 1900));
    bent.go(2900, 100).go(100, 100);
    bent.piece(3000, HOOP).go(3300, 100);
    assertFalse(
        marks(Streams.measured(Streams.evaluated(bent.only()))).contains(PieceMark.Kind.NO_CHANGE));
  }
}
