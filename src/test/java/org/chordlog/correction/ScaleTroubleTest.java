package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.chordlog.correction.Advice.Action;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.MachineScale.Tighter;
import org.junit.jupiter.api.Test;

/** The scale of the rollers, its lost motion and step, the gauge, and when it is left alone. */
final class ScaleTroubleTest {
  /** Moves that reverse lose 0.05 mm. */
  @Test
  void lostMotionIsFoundAndSaid() {
    Bench bench = Bench.known();
    double level = 0;
    double dial = 10;
    double lost = 0.05;
    for (int i = 0; i < 40; i++) {
      bench.pieces(level, level, level, level);
      double amount = (i % 4 < 2 ? 1 : -1) * 0.12;
      boolean reversed = i > 0 && i % 2 == 0;
      bench.corrected(dial, dial + amount);
      dial += amount;
      level += 45 * (reversed ? amount - Math.signum(amount) * lost : amount);
    }
    bench.pieces(level);
    assertTrue(bench.notices().contains(Notice.Kind.LOST_MOTION), bench.notices()::toString);
    LostMotion.Found found = bench.corrector.state().moves.lostMotion();
    assertEquals(lost, Objects.requireNonNull(found).amount(), 0.02);
  }

  /** Where it is known, a reversal is made longer on the scale and counted shorter. */
  @Test
  void knownLostMotionIsAllowedFor() {
    MachineScale scale =
        new MachineScale("dial", "mm", 0.01, Tighter.HIGHER, 0.05, 0.01, Bench.KNOWN);
    Bench bench = new Bench(scale).job("A").pieces(9, 9).corrected(10, 9.8);
    assertEquals(9 - 0.2 * 45, bench.belief().level(), 1.5, "no reversal known yet");
    bench.pieces(-9, -9);
    double plain = -bench.belief().level() / bench.belief().gain();
    Correct back = assertInstanceOf(Correct.class, bench.advice());
    assertEquals(plain + 0.05, back.move().amount(), 0.011);
    double level = bench.belief().level();
    bench.corrected(9.8, 9.8 + back.move().amount());
    assertEquals(0, bench.belief().level(), Math.abs(level) / 10);
  }

  /** The gauge's own u is the least that pieces are believed to vary by. */
  @Test
  void aCoarseGaugeWidensWhatIsBelieved() {
    PieceReading coarse = new PieceReading("", 1, 1.002 / 1800, 4 * Bench.UNIT, false);
    Bench bench = Bench.known().piece(coarse);
    assertEquals(16, bench.corrector.state().filter().newest().variance(), 1e-9);
  }

  /** What was said about the scale and what corrections show do not agree. */
  @Test
  void aScaleDescribedTheWrongWayRound() {
    MachineScale scale =
        new MachineScale("dial", "mm", 0.01, Tighter.LOWER, 0, 0.01, GainPrior.unknown());
    Bench bench = new Bench(scale).job("A").pieces(-12, -12).corrected(10, 10.3).pieces(1, 1.5);
    assertTrue(bench.notices().contains(Notice.Kind.SCALE_REVERSED), bench.notices()::toString);
  }

  /** What was learned from a move of 0.1 mm is no ground for one of 4 mm. */
  @Test
  void noFurtherAtOnceThanFiveTimesTheLargestMoveThatAnythingWasLearnedFrom() {
    Bench bench = new Bench(Bench.dial(GainPrior.unknown())).job("A");
    bench.pieces(-4.2, -4.2, -4.2).corrected(10, 10.1).pieces(0.1, 0.1, 0.1);
    assertTrue(bench.notices().isEmpty(), bench.notices()::toString);
    bench.tell(new Told.SetUp(10.1)).pieces(-170, -170);
    Correct advice = assertInstanceOf(Correct.class, bench.advice());
    assertEquals(0.5, advice.move().amount(), 1e-9);
    assertEquals(List.of(Notice.Kind.PART_OF_THE_WAY), bench.notices());
    bench.corrected(10.1, 10.6).pieces(-148, -148);
    advice = assertInstanceOf(Correct.class, bench.advice());
    assertEquals(2.5, advice.move().amount(), 1e-9, "a larger one was tried by now");
  }

  /** People who said what one unit does have moved it that far before. */
  @Test
  void anAmountIsNamedInFullWhereItWasSaidWhatOneUnitDoes() {
    Bench bench = Bench.known().pieces(-170, -170);
    Correct advice = assertInstanceOf(Correct.class, bench.advice());
    assertTrue(advice.move().amount() > 3, advice.text().toString());
    assertTrue(bench.notices().isEmpty(), bench.notices()::toString);
  }

  @Test
  void promisesAreCounted() {
    Bench bench = Bench.known().pieces(9, 9);
    bench.corrected(10, 9.8).pieces(0.2, -0.1, 0.4, 0.1, 0.2);
    CorrectionSnapshot.Kept kept = bench.corrector.snapshot().learned().promises();
    assertEquals(new CorrectionSnapshot.Kept(1, 1, kept.meanStated()), kept);
    assertTrue(kept.meanStated() > 0.9);
  }

  /** The rest of a job is too short for a correction to pay. */
  @Test
  void theLastPieceOfAJobNeedsNoCorrection() {
    Bench bench = new Bench(Bench.dial(Bench.KNOWN));
    bench.tell(new Told.JobStart(1, Bench.AIM, "", "", "", 3)).pieces(0.1, 5, 5.5);
    Advice.Leave leave = assertInstanceOf(Advice.Leave.class, bench.advice());
    assertEquals(Advice.LeaveReason.JOB_NEARLY_DONE, leave.reason());
  }

  @Test
  void lessThanTheScalesStepIsLeftAlone() {
    MachineScale turns =
        new MachineScale("handwheel", "turns", 1, Tighter.HIGHER, 0, null, Bench.KNOWN);
    Bench bench = new Bench(turns).job("A").pieces(12, 12, 12);
    Advice.Leave leave = assertInstanceOf(Advice.Leave.class, bench.advice());
    assertEquals(Advice.LeaveReason.LESS_THAN_A_STEP, leave.reason());
  }

  @Test
  void amountsFitTheScalesStep() {
    Correct advice = assertInstanceOf(Correct.class, Bench.known().pieces(9, 9).advice());
    assertEquals(-0.19, advice.move().amount(), 1e-9);
    assertTrue(
        advice.text().toString().contains("Open by 0.19\u00a0mm (± 0.0"), advice.text().toString());
    assertTrue(
        advice.text().toString().contains("on the dial, to a lower number"),
        advice.text().toString());
  }

  @Test
  void noAdviceBesideADoubtfulGauge() {
    Bench bench = Bench.known().pieces(9, 9);
    Advice advice = bench.corrector.snapshot("the zero is stale.").advice();
    assertEquals(Action.NONE, advice.action());
    assertEquals("No advice: the zero is stale.", advice.text().toString());
    assertNull(advice.amount());
  }

  @Test
  void theGaugesCommonUncertaintyIsSaidApart() {
    assertTrue(Advice.commonUncertainty(1.16).toString().contains("± 2.3 mm"));
    assertTrue(Advice.caution().contains("drive locked out"));
  }

  @Test
  void pointsForACharts() {
    Bench bench = Bench.known().pieces(9, 9).corrected(10, 9.8).pieces(0.1);
    List<TrailPoint> trail = bench.corrector.snapshot().trail();
    assertEquals(
        List.of(
            TrailPoint.Kind.SET_UP,
            TrailPoint.Kind.PIECE,
            TrailPoint.Kind.PIECE,
            TrailPoint.Kind.CORRECTION,
            TrailPoint.Kind.PIECE),
        trail.stream().map(TrailPoint::kind).toList());
    assertEquals(-0.2, trail.get(3).move().done(), 1e-9);
    assertEquals(-0.19, trail.get(3).move().advised(), 1e-9);
    assertEquals(1.217, trail.get(4).level().deadband(), 1e-3);
  }
}
