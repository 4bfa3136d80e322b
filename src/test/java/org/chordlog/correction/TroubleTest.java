package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.correction.Advice.Action;
import org.chordlog.correction.Advice.AmountUnknown;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.Advice.Direction;
import org.chordlog.correction.Told.Correction;
import org.chordlog.correction.Told.Lot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What goes wrong in a shop, case by case. */
final class TroubleTest {
  /** Neither unit nor sign is known: no amount until a correction has shown both. */
  @ParameterizedTest
  @ValueSource(doubles = {45, -16.7, 0.45, -225})
  void unitAndSignAreLearned(double gain) {
    Bench bench = new Bench(Bench.dial(GainPrior.unknown())).job("A").pieces(-12, -11);
    AmountUnknown first = assertInstanceOf(AmountUnknown.class, bench.advice());
    assertEquals(Direction.TIGHTER, first.direction());
    assertNull(first.amount());
    assertTrue(
        first.text().toString().startsWith("Tighten the radius by 20.6 mm"),
        first.text().toString());
    double move = 24 / gain;
    bench.corrected(10, 10 + move).pieces(12.5);
    Correct next = assertInstanceOf(Correct.class, bench.advice());
    assertEquals(-move / 2, next.move().amount(), Math.abs(move) / 6 + 0.01);
    assertEquals(Direction.MORE_OPEN, next.move().direction());
    assertEquals(gain, bench.belief().gain(), Math.abs(gain) / 6);
    assertNotNull(next.move().from());
  }

  @ParameterizedTest
  @ValueSource(doubles = {22.5, 90})
  void aGainThatIsTwiceWrongIsLearnedAtTheSecondPiece(double prior) {
    GainPrior wrong = new GainPrior(prior * Bench.UNIT, prior / 2 * Bench.UNIT);
    Bench bench = new Bench(Bench.dial(wrong)).job("A").pieces(15);
    bench.corrected(10, 10 - 0.3).pieces(15 - 0.3 * 45);
    double before = Math.abs(Math.log(prior / 45));
    double after = Math.abs(Math.log(bench.belief().gain() / 45));
    assertTrue(after < before / 2, () -> "gain now " + bench.belief().gain());
  }

  /** θ becomes 0, its variance P + (θ/2)² + (T/2)²; what the gain is does not change. */
  @Test
  void correctedWithoutAnAmount() {
    Bench bench = Bench.known().pieces(9, 8.5);
    Belief before = bench.belief();
    bench.tell(Correction.withoutAmount());
    double half = Bench.AIM.halfTolerance() / 2;
    double variance = before.levelVariance() + before.level() * before.level() / 4 + half * half;
    assertEquals(0, bench.belief().level());
    assertEquals(variance, bench.belief().levelVariance(), 1e-9);
    assertEquals(before.gain(), bench.belief().gain());
    assertEquals(Action.TOO_EARLY, bench.advice().action());
    assertNull(bench.corrector.snapshot().setting());
  }

  @Test
  void whatWasAdvisedWasDoneAndNotRecorded() {
    Bench bench = Bench.known().pieces(9, 8.5);
    assertEquals(Action.CORRECT, bench.advice().action());
    bench.pieces(0.5);
    assertTrue(bench.notices().contains(Notice.Kind.DID_YOU_CORRECT), bench.notices()::toString);
    assertEquals(0, bench.belief().level(), 2);
    bench.corrected(10, 10.01);
    assertFalse(bench.notices().contains(Notice.Kind.DID_YOU_CORRECT));
  }

  /** The dial was moved between two recorded corrections: asked about, and not counted again. */
  @Test
  void anUnrecordedMoveIsNoticed() {
    Bench bench = Bench.known().pieces(9).corrected(10, 9.8).pieces(0.3, 4.8, 4.6);
    Belief before = bench.belief();
    bench.corrected(9.9, 9.8);
    Notice notice = bench.corrector.snapshot().notices().get(0);
    assertEquals(Notice.Kind.UNRECORDED_MOVE, notice.kind());
    assertTrue(
        notice.text().toString().contains("read 9.9 before this correction, but 9.8"),
        notice.text().toString());
    assertEquals(
        before.level() - 0.1 * before.gain(), bench.belief().level(), 1e-9, "the gap not counted");
    assertTrue(bench.belief().levelVariance() > before.levelVariance() + 0.0025 * 45 * 45 - 1);
  }

  /** No piece between: the gap is a move like any other. */
  @Test
  void anUnrecordedMoveWithoutAPieceIsCounted() {
    Bench one = Bench.known().pieces(9).corrected(10, 9.9).corrected(9.7, 9.8);
    assertEquals(9.8, one.corrector.snapshot().setting());
    Bench other = Bench.known().pieces(9).corrected(10, 9.7).corrected(9.7, 9.8);
    assertEquals(other.belief().level(), one.belief().level(), 1e-9);
  }

  @Test
  void whatIsRecordedCountsNotWhatWasAdvised() {
    Bench bench = Bench.known().pieces(9, 9);
    double level = bench.belief().level();
    bench.corrected(10, 9.95);
    assertEquals(level - 0.05 * 45, bench.belief().level(), 0.3);
  }

  /** A new lot together with a correction teaches the gain less than a correction alone. */
  @Test
  void correctedTogetherWithANewLot() {
    Bench alone = Bench.known().pieces(9, 9, 9).corrected(10, 9.8).pieces(-6);
    Bench withLot = Bench.known().pieces(9, 9, 9).tell(new Lot("B")).corrected(10, 9.8).pieces(-6);
    double taught = alone.belief().gain() - 45;
    assertTrue(taught > 1);
    assertTrue(withLot.belief().gain() - 45 < taught / 2);
  }

  @Test
  void aLotThatNobodyToldIsFoundAsAJump() {
    Bench bench = Bench.known().pieces(0.3, -0.5, 0.8, -0.2, 0.4, 0.1, -0.3, 0.2);
    bench.pieces(9);
    assertEquals(Action.MEASURE_AGAIN, bench.advice().action());
    assertTrue(bench.advice().text().toString().contains("Measure one more"));
    bench.pieces(8.8);
    assertEquals(Action.CORRECT, bench.advice().action());
    assertEquals(9, bench.belief().level(), 2.5);
  }

  @Test
  void aStrayReadingMovesNothing() {
    Bench bench = Bench.known().pieces(0.3, -0.5, 0.8, -0.2, 0.4, 0.1, -0.3, 0.2);
    bench.pieces(-11);
    assertEquals(Action.MEASURE_AGAIN, bench.advice().action());
    bench.pieces(0.4);
    assertEquals(Action.LEAVE, bench.advice().action());
    assertEquals(0, bench.belief().level(), 0.8);
  }

  /** A flat plate measured by mistake is no level at all; two of them would be. */
  @Test
  void aReadingFarFromAnyLevelIsLeftOut() {
    Bench bench = Bench.known().pieces(0.3, -0.5, 0.8, -0.2);
    double before = bench.belief().level();
    bench.piece(PieceReading.flat(Bench.UNIT));
    assertEquals(Action.MEASURE_AGAIN, bench.advice().action());
    assertEquals(before, bench.belief().level());
    bench.pieces(0.3);
    assertEquals(Action.LEAVE, bench.advice().action());
    bench.piece(PieceReading.flat(Bench.UNIT)).piece(PieceReading.flat(Bench.UNIT));
    assertInstanceOf(AmountUnknown.class, bench.advice());
    assertEquals(-1000, bench.belief().level(), 5);
  }

  /** A first piece that reads flat says which way, and does not teach the gain. */
  @Test
  void flatAfterTheSetUp() {
    Bench bench = Bench.known().piece(PieceReading.flat(Bench.UNIT));
    AmountUnknown advice = assertInstanceOf(AmountUnknown.class, bench.advice());
    assertTrue(advice.text().toString().contains("press in further"), advice.text().toString());
    assertNull(advice.amount());
    assertEquals(-1000, bench.belief().level(), 1);
    bench.corrected(5, 24).pieces(-40);
    assertEquals(45, bench.belief().gain(), 1e-9);
    Correct next = assertInstanceOf(Correct.class, bench.advice());
    assertEquals(40 / 45.0, next.move().amount(), 0.1);
  }
}
