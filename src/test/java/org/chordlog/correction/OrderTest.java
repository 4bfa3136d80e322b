package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.chordlog.correction.Advice.Action;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.MachineScale.Tighter;
import org.chordlog.correction.Told.Correction;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.correction.Told.Lot;
import org.chordlog.correction.Told.Piece;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/**
 * Nonsense is refused in one sentence and leaves the state as it was; other targets are handled.
 */
final class OrderTest {
  private static void refused(Executable input, String field, String problem) {
    BadInput bad = assertThrows(BadInput.class, input);
    assertEquals(1, bad.faults().size());
    assertEquals(field, bad.faults().get(0).field());
    assertTrue(String.valueOf(bad.getMessage()).contains(problem), bad.getMessage());
  }

  @Test
  void beforeAnyJob() {
    Corrector corrector = new Corrector(MachineScale.unknown(), Tuning.usual());
    String why = "before any job";
    refused(() -> corrector.tell(new Lot("A")), "lot", why);
    refused(() -> corrector.tell(new Piece(1, List.of(Bench.reading(1)))), "piece", why);
    refused(() -> corrector.tell(Correction.between(1, 2)), "correction", why);
    refused(() -> corrector.tell(new Told.SetUp(null)), "setUp", why);
    refused(() -> corrector.tell(new Told.TargetChange(Bench.AIM)), "target", why);
    assertEquals(Action.NONE, corrector.advice().action());
    assertEquals(-1, corrector.job());
  }

  @Test
  void outOfOrder() {
    Bench bench = Bench.known().pieces(1, 2);
    byte[] before = bench.corrector.checkpoint();
    refused(() -> bench.tell(new Lot("A")), "lot", "in the machine already");
    Piece again = new Piece(2, List.of(Bench.reading(1)));
    refused(() -> bench.tell(again), "piece", "is out of order");
    assertArrayEquals(before, bench.corrector.checkpoint());
  }

  @Test
  void amountsNeedAUnitAndBothSettings() {
    refused(
        () -> new MachineScale("dial", " ", 0.01, Tighter.HIGHER, 0, null, GainPrior.unknown()),
        "unit",
        "without a unit");
    refused(() -> new Correction(12.4, null), "after", "is missing");
    refused(() -> Correction.between(12.4, Double.NaN), "after", "is not a number");
    refused(() -> Correction.by(Double.POSITIVE_INFINITY), "amount", "is too large a number");
  }

  @Test
  void piecesNeedARadiusOrAFlat() {
    refused(() -> new Piece(1, List.of()), "piece", "neither a radius nor a flat");
    refused(() -> PieceReading.radius(0, 0.6), "radiusMm", "is not above zero");
    refused(() -> PieceReading.radius(1800, -1), "standardUncertaintyMm", "is below zero");
    refused(() -> new Piece(0, List.of(Bench.reading(1))), "piece", "is out of range");
  }

  @Test
  void limits() {
    refused(() -> new Aim(1800, null, null), "limits", "nothing to weigh");
    refused(() -> new Aim(1800, 1800.0, null), "lowerMm", "is not below the target");
    refused(() -> new Aim(1800, null, 1790.0), "upperMm", "is not above the target");
    refused(() -> Aim.symmetric(1800, 0), "toleranceMm", "is not above zero");
  }

  @Test
  void tooManyPositions() {
    Bench bench = Bench.known();
    PieceReading[] many = new PieceReading[26];
    for (int i = 0; i < many.length; i++) {
      many[i] = Bench.reading(0).at("place " + i, 1);
    }
    refused(() -> bench.piece(many), "position", "too many");
  }

  /** One limit: its distance from the target is the half tolerance, the other side never is out. */
  @Test
  void oneLimitIsHandled() {
    Aim onlyUpper = new Aim(1800, null, 1812.0);
    assertEquals(20 / 3.0, onlyUpper.halfTolerance(), 1e-12);
    Bench bench = new Bench(Bench.dial(Bench.KNOWN));
    bench.tell(new JobStart(1, onlyUpper, "", "", "", null)).pieces(9, 9);
    Correct tight = assertInstanceOf(Correct.class, bench.advice());
    assertEquals(0, tight.prospect().outBefore(), 1e-6);
    bench.corrected(10, 9.6).pieces(-9);
    Correct open = assertInstanceOf(Correct.class, bench.advice());
    assertTrue(open.prospect().outBefore() > 0.8);
  }

  /** κ stays where it is; deviations, gain and scatter are those from the new target. */
  @Test
  void targetChangedInMidJob() {
    Bench bench = Bench.known().pieces(0.2, -0.3, 0.1, 0.3);
    Belief before = bench.belief();
    Aim wider = Aim.symmetric(1900, 12);
    bench.tell(new Told.TargetChange(wider));
    double ratio = 1900 / 1800.0;
    assertEquals(1000 * ((1 + before.level() / 1000) * ratio - 1), bench.belief().level(), 1e-9);
    assertEquals(before.gain() * ratio, bench.belief().gain(), 1e-9);
    assertEquals(before.levelVariance() * ratio * ratio, bench.belief().levelVariance(), 1e-9);
    Correct advice = assertInstanceOf(Correct.class, bench.advice());
    assertEquals(Advice.Direction.MORE_OPEN, advice.move().direction());
    assertEquals(1900, advice.prospect().radiusMm(), 5);
    assertEquals(100, 1900 - advice.level().radiusMm(), 3);
  }

  /** The gain lives in curvature: another job at another radius begins with it. */
  @Test
  void theGainGoesWithTheMachine() {
    Bench bench = new Bench(Bench.dial(GainPrior.unknown())).job("A");
    bench.pieces(-12, -12, -11).corrected(10, 10.27).pieces(0.1, -0.4, 0.2);
    double perMm =
        Objects.requireNonNull(bench.corrector.snapshot().learned().gain()).perMmPerUnit();
    double before = bench.belief().gainUncertainty() / bench.belief().gain();
    bench.tell(new JobStart(2, Aim.symmetric(900, 6), "", "", "", null));
    GainEstimate gain = bench.corrector.snapshot().learned().gain();
    assertEquals(perMm, gain.perMmPerUnit(), 1e-3 * perMm);
    assertTrue(gain.known());
    double after = bench.belief().gainUncertainty() / bench.belief().gain();
    double twice = Math.sqrt(before * before + 0.01 + 0.01);
    assertEquals(twice, after, 1e-3, "that job differed by 10 % from the machine, so does this");
  }

  /** Ten jobs that each tell the gain to 20 %: the next differs from the machine by 10 %. */
  @Test
  void whatIsKnownOfTheGainGrowsFromJobToJob() {
    GainMemory memory = GainMemory.of(new GainPrior(2e-5, 1e-5));
    for (int job = 0; job < 10; job++) {
      double variance = 1 / (1 / memory.jobVariance() + 1 / square(5e-6));
      double shown = (job % 2 == 0 ? 2.6e-5 : 2.4e-5) / square(5e-6);
      double gain = variance * (memory.jobGain() / memory.jobVariance() + shown);
      memory = memory.afterJob(gain, variance);
    }
    assertEquals(2.5e-5, memory.jobGain(), 6e-7);
    double each = square(5e-6) + square(2.5e-6);
    double machine = 1 / (10 / each + 1 / square(1e-5));
    assertEquals(Math.sqrt(machine + square(2.5e-6)), Math.sqrt(memory.jobVariance()), 1e-7);
    assertEquals(memory.variance(), memory.afterJob(9e-5, 1).variance(), "nothing was taught");
  }

  private static double square(double value) {
    return value * value;
  }

  @Test
  void anotherScaleBeginsAnew() {
    Bench bench = Bench.known().pieces(9, 9).corrected(10, 9.8).pieces(0.1, 5, 5.2);
    bench.tell(new Told.ScaleChange(MachineScale.unknown()));
    assertEquals(Action.AMOUNT_UNKNOWN, bench.advice().action());
    assertNull(bench.corrector.snapshot().setting());
  }

  /** Advice never comes from a gap: after each event a piece is waited for. */
  @Test
  void afterAnEventAPieceIsWaitedFor() {
    Bench bench = Bench.known();
    assertEquals("Set up: measure the first piece.", bench.advice().text().toString());
    assertNull(bench.advice().level());
    bench.pieces(9);
    assertEquals(Action.CORRECT, bench.advice().action());
    bench.corrected(10, 9.9);
    assertEquals("Corrected: measure the next piece.", bench.advice().text().toString());
    bench.pieces(5).tell(new Lot("B"));
    assertEquals("New lot: measure its first piece.", bench.advice().text().toString());
    assertEquals(Action.TOO_EARLY, bench.advice().action());
    bench.pieces(5).tell(new Told.SetUp(9.0));
    assertEquals(Action.TOO_EARLY, bench.advice().action());
    assertEquals(9.0, bench.corrector.snapshot().setting());
  }

  @Test
  void tooEarlySaysHowManyMorePieces() {
    Bench bench = Bench.known().pieces(2.4);
    Advice.TooEarly early = assertInstanceOf(Advice.TooEarly.class, bench.advice());
    assertTrue(early.morePieces() >= 1);
    assertTrue(
        early.text().toString().startsWith("Looks 4.2 mm too tight (± "), early.text().toString());
    assertTrue(early.text().toString().contains("better than chance"), early.text().toString());
  }
}
