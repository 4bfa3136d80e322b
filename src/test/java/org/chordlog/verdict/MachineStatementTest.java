package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.stats.drift.DriftFinding;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.stats.drift.MachineVerdict;
import org.junit.jupiter.api.Test;

/** An invented machine at R 1800 ± 12 mm, a piece each five minutes, with a scatter of 0.1 %. */
final class MachineStatementTest {
  private static final double TARGET = 1800;
  private static final double TOLERANCE = 12;
  private static final double SCATTER = 1e-3;
  private static final long FIVE_MINUTES = 300_000_000L;

  private final MachineStatistics machine = new MachineStatistics();
  private final Random random = new Random(5);
  private double set;

  private void bend(int from, int to, double slope, double level) {
    for (int i = from; i <= to; i++) {
      double value = level + slope * (i - from) - set + SCATTER * random.nextGaussian();
      machine.add(1, i, i * FIVE_MINUTES, value);
      machine.endPiece();
    }
  }

  private void correct(int after, double by) {
    set += by;
    machine.happened(
        new JobEvent(
            after,
            1,
            "m",
            JobEvent.Kind.CORRECTION,
            after,
            new JobEvent.Content(12.0, 12.0 + 200 * by, "", ""),
            new Recorded(after * FIVE_MINUTES, "me")));
  }

  private MachineStatement said() {
    return new MachineStatement(machine.verdict(TOLERANCE / TARGET), TARGET, TOLERANCE);
  }

  /** Nobody is sent to the rollers for what the gauge may have done. */
  @Test
  void whereTheGaugeIsInDoubtItComesFirst() {
    bend(1, 60, 0, 0);
    bend(61, 120, 0, 6e-3);
    Statement machine = said().statement();
    Statement gauge =
        new MachineStatement(
                said().verdict(), TARGET, TOLERANCE, GaugeBesideMachine.CHECK_FAILED, "")
            .statement();
    assertTrue(machine.advice().toString().contains("rollers"), machine.advice()::toString);
    assertEquals(machine.word().replace("Machine", "Machine or gauge"), gauge.word());
    assertTrue(gauge.reason().toString().endsWith("failed its check on a master."));
    assertTrue(gauge.advice().toString().startsWith("First the gauge, not the rollers:"));
    assertEquals(Tone.GOOD, quietBeside(GaugeBesideMachine.OTHER_BRIDGE).tone());
  }

  /** Its number is counted over all jobs: at a station it would be taken for the job's. */
  @Test
  void whichPieceOfItsJobAMoveBeganWith() {
    bend(1, 60, 0, 0);
    bend(61, 120, 0, 6e-3);
    MachineVerdict moved = said().verdict();
    String reason =
        new MachineStatement(
                moved, TARGET, TOLERANCE, GaugeBesideMachine.TRUSTED, "piece 9 of job hoops")
            .statement()
            .reason()
            .toString();
    assertEquals(said().statement().reason() + " It began with piece 9 of job hoops.", reason);
  }

  private static Statement quietBeside(GaugeBesideMachine gauge) {
    MachineStatementTest steady = new MachineStatementTest();
    steady.bend(1, 40, 0, 0);
    return new MachineStatement(steady.said().verdict(), TARGET, TOLERANCE, gauge, "").statement();
  }

  private String besideAnAlert(double sincePiece) {
    Alert told =
        Alert.raised(
            AlertKey.machine(AlertKind.ROLLER_CREEPS, "m"),
            AlertStatus.raised(5, false),
            AlertEvidence.of(Map.of(AlertFigure.SINCE_PIECE, sincePiece)));
    return new AlertBesideStatus(said(), List.of(told)).sentence().toString();
  }

  /** An alert keeps what was found when it was told, the status goes on. */
  @Test
  void whyAnAlertSaysOtherThanTheStatus() {
    assertEquals("", new AlertBesideStatus(said(), List.of()).sentence().toString());
    bend(1, 40, 0, 0);
    assertEquals(
        "The alert says what was found when it was told; now, after 40 pieces, the status is:"
            + " machine steady. The alert ends once two judgements in a row find nothing that"
            + " matters.",
        besideAnAlert(12));
    bend(41, 120, 4e-5, 0);
    Long since = Objects.requireNonNull(said().verdict().sincePiece());
    assertEquals("", besideAnAlert(since));
    String other = besideAnAlert(since - 7.0);
    assertTrue(other.endsWith("the status is: machine creeping since piece " + since + "."), other);
  }

  @Test
  void fewPiecesAndSteadyOnes() {
    bend(1, 5, 0, 0);
    assertEquals("Too few pieces to tell", said().statement().word());
    bend(6, 40, 0, 0);
    assertEquals(Tone.GOOD, said().statement().tone());
    assertEquals("Machine steady", said().statement().word());
  }

  /** 0.4 % in 100 pieces; a shift of 8 h has 96 pieces of five minutes. */
  @Test
  void aCreepIsSaidPerHundredPiecesAndPerShiftThroughACorrection() {
    bend(1, 20, 0, 0);
    bend(21, 70, 4e-5, 0);
    correct(70, 2e-3);
    bend(71, 140, 4e-5, 2e-3);
    Statement said = said().statement();
    assertTrue(said.word().startsWith("Machine creeping since piece "), said.word());
    assertEquals(96, Objects.requireNonNull(said().piecesPerShift()), 1e-9);
    MachineVerdict verdict = machine.verdict(TOLERANCE / TARGET);
    DriftFinding creep = verdict.findings().get(0);
    double hundred = Objects.requireNonNull(creep.perHundred()).slope();
    assertEquals(0.004, hundred, 0.001);
    String perHundred = String.format("get %.2f %% tighter (−", 100 * hundred);
    assertTrue(said.reason().toString().contains(perHundred), said.reason().toString());
    assertTrue(
        said.reason().toString().contains("per shift of 96 pieces (8 h)"),
        said.reason().toString());
    assertTrue(
        said.reason().toString().contains("corrected once meanwhile, by +0.4 altogether"),
        said.reason().toString());
    assertTrue(
        said.reason().toString().contains("the limit of 1800 ± 12 mm after about "),
        said.reason().toString());
    assertEquals(
        Objects.requireNonNull(verdict.reachesTolerance()) / 12,
        Objects.requireNonNull(said().hoursLeft()),
        1e-9);
    assertEquals(
        Objects.requireNonNull(creep.slope()).slope() * 96,
        Objects.requireNonNull(said().perShift(creep)),
        1e-15);
  }

  @Test
  void aCreepToWiderAndItsCorrectionsHaveATrueMinus() {
    bend(1, 20, 0, 0);
    bend(21, 60, -4e-5, 0);
    correct(60, -1e-3);
    bend(61, 100, -4e-5, -1e-3);
    correct(100, -1e-3);
    bend(101, 140, -4e-5, -2e-3);
    String reason = said().statement().reason().toString();
    assertTrue(reason.contains("(95 % sure: 0."), reason);
    assertTrue(reason.contains("corrected twice meanwhile, by −0.4 altogether"), reason);
    assertFalse(reason.contains("-"), reason);
  }

  @Test
  void aCreepThatStoppedIsNotForgotten() {
    bend(1, 20, 0, 0);
    bend(21, 80, 1e-4, 0);
    correct(80, 6e-3);
    bend(81, 180, 0, 6e-3);
    Statement said = said().statement();
    assertEquals("Machine steady", said.word());
    assertTrue(
        said.reason().toString().contains("Before: crept from piece "), said.reason().toString());
  }

  @Test
  void aJumpIsAJumpAndWithoutATargetThereAreNoMillimetres() {
    bend(1, 40, 0, 0);
    bend(41, 90, 0, -5e-3);
    MachineStatement bare = new MachineStatement(machine.verdict(null), null, null);
    Statement said = bare.statement();
    assertTrue(said.word().startsWith("Machine jumped at piece 4"), said.word());
    assertTrue(said.reason().toString().contains("% wider."), said.reason().toString());
    assertNull(bare.hoursLeft());
  }

  @Test
  void aLotIsNamed() {
    bend(1, 40, 0, 0);
    machine.happened(
        new JobEvent(
            1,
            1,
            "m",
            JobEvent.Kind.MATERIAL_LOT,
            40,
            new JobEvent.Content(null, null, "B-204", ""),
            new Recorded(40 * FIVE_MINUTES, "me")));
    bend(41, 70, 0, 4e-3);
    assertEquals("Moved by lot B-204", said().statement().word());
  }
}
