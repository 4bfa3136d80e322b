package org.chordlog.stats.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.bench.MachineRates;
import org.chordlog.bench.MachineRates.Course;
import org.chordlog.bench.Rate;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.drift.MachineVerdict.State;
import org.chordlog.stats.math.TheilSen;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A machine over its jobs: 0.3 % scatter from piece to piece, jobs of 20 pieces, three readings.
 */
@Tag("slow")
final class MachineStatisticsTest {
  private static final double SCATTER = 0.003;

  private static MachineStatistics machine(int seed, int pieces, IntToDoubleFunction level) {
    MachineStatistics machine = new MachineStatistics();
    Well19937c random = new Well19937c(seed);
    for (int piece = 1; piece <= pieces; piece++) {
      double own = level.applyAsDouble(piece) + SCATTER * random.nextGaussian();
      for (int at = 0; at < 3; at++) {
        double deviation = own + SCATTER / 5 * random.nextGaussian();
        double target = 1.0 / (1000 + piece / 20);
        machine.add(
            piece / 20, piece % 20 + 1, piece * 60_000_000L, target * (1 + deviation), target);
      }
    }
    return machine;
  }

  @Test
  void creepingMachineWithForecast() {
    MachineVerdict verdict = machine(1, 400, piece -> 0.01 * piece / 1000).verdict(0.01);
    assertEquals(State.CREEPING, verdict.state(), verdict.text());
    TheilSen slope = verdict.slope();
    assertNotNull(slope);
    assertTrue(slope.lower() < 1e-5 && 1e-5 < slope.upper(), verdict.text());
    Double reach = verdict.reachesTolerance();
    assertNotNull(reach);
    assertEquals(600, reach, 200);
  }

  @Test
  void newLotThatSpringsBackMoreIsAJump() {
    MachineVerdict verdict = machine(2, 200, piece -> piece > 120 ? -0.006 : 0).verdict(null);
    assertEquals(State.JUMPED, verdict.state(), verdict.text());
    Long since = verdict.sincePiece();
    assertNotNull(since);
    assertEquals(121, since, 6);
    Double step = verdict.step();
    assertNotNull(step);
    assertEquals(-0.006, step, 0.002);
  }

  /** False alarms on steady machines stay below the 1 % stated: 2,000 of each length. */
  @ParameterizedTest
  @ValueSource(ints = {15, 50, 150})
  void steadyMachineStaysQuiet(int pieces) {
    int alarms = 0;
    int machines = 2000;
    for (int seed = 0; seed < machines; seed++) {
      State state = machine(seed + 1000 * pieces, pieces, piece -> 0).verdict(null).state();
      alarms += state == State.STEADY ? 0 : 1;
    }
    double most = 0.01 + 3 * Math.sqrt(0.01 * 0.99 / machines);
    assertTrue(alarms / (double) machines <= most, alarms + " of " + machines);
  }

  private static JobEvent correction(long id) {
    return new JobEvent(
        id,
        1,
        "m",
        JobEvent.Kind.CORRECTION,
        id,
        new JobEvent.Content(2.0, 1.5, "", ""),
        new Recorded(1, "me"));
  }

  /** Pieces of one reading with their deviations, corrected by all of it after every so many. */
  private static MachineStatistics corrected(int seed, int pieces, int every, double slope) {
    MachineStatistics machine = new MachineStatistics();
    Well19937c random = new Well19937c(seed);
    double taken = 0;
    for (int piece = 1; piece <= pieces; piece++) {
      if (piece > 1 && (piece - 1) % every == 0) {
        machine.happened(correction(piece));
        taken = slope * piece + SCATTER * random.nextGaussian();
      }
      machine.add(1, piece, piece, slope * piece - taken + SCATTER * random.nextGaussian());
    }
    machine.endPiece();
    return machine;
  }

  /** Corrected each 12 pieces: no setting alone shows it, together they do. */
  @Test
  void correctedRollersThatCreepOnStillShow() {
    int found = 0;
    int near = 0;
    for (int seed = 1; seed <= 50; seed++) {
      MachineVerdict verdict = corrected(seed, 125, 12, 0.0004).verdict(0.01);
      TheilSen slope = verdict.slope();
      if (verdict.state() == State.CREEPING) {
        found++;
        assertNotNull(slope);
        near += Math.abs(slope.slope() - 4e-4) < 3.5e-4 ? 1 : 0;
        assertTrue(verdict.text().contains("correction"), verdict.text());
      }
    }
    assertTrue(found >= 42, found + " of 50");
    assertTrue(near >= 0.9 * found, near + " of " + found);
  }

  private static JobEvent lot(long id, String name) {
    return new JobEvent(
        id,
        1,
        "m",
        JobEvent.Kind.MATERIAL_LOT,
        id,
        new JobEvent.Content(null, null, name, ""),
        new Recorded(1, "me"));
  }

  /** Four standard deviations from piece 61 on. */
  @Test
  void aRecordedLotIsNamedAsTheCauseOfItsOwnJump() {
    MachineStatistics machine = machine(7, 60, piece -> 0);
    machine.happened(lot(180, "B-204"));
    Well19937c random = new Well19937c(70);
    for (int piece = 1; piece <= 8; piece++) {
      machine.add(9, piece, piece, -0.012 + SCATTER * random.nextGaussian());
    }
    machine.endPiece();
    MachineVerdict verdict = machine.verdict(0.01);
    assertEquals(State.NEW_LOT, verdict.state(), verdict.text());
    DriftFinding finding = verdict.finding();
    assertNotNull(finding);
    assertEquals("B-204", finding.lot());
    assertEquals(61, finding.since().piece());
    assertEquals(-0.012, finding.change(), 0.004);
    machine.happened(correction(200));
    List<DriftFinding> history = machine.verdict(0.01).history();
    assertEquals(List.of(DriftFinding.Kind.LOT), history.stream().map(DriftFinding::kind).toList());
  }

  /** What was corrected meanwhile is told, and the creep is history once it is over. */
  @Test
  void creepGoesOnThroughACorrectionAndThenIsHistory() {
    MachineStatistics machine = machine(4, 100, piece -> 0.02 * piece / 100);
    machine.happened(correction(300));
    DriftFinding through = machine.verdict(0.01).finding();
    assertNotNull(through);
    assertEquals(DriftFinding.Kind.CREEP, through.kind());
    assertEquals(new Corrections(1, 1, -0.5), through.corrections());
    Well19937c random = new Well19937c(41);
    for (int piece = 1; piece <= 60; piece++) {
      machine.add(99, piece, piece * 60_000_000L, SCATTER * random.nextGaussian());
    }
    machine.endPiece();
    MachineVerdict after = machine.verdict(0.01);
    assertEquals(State.STEADY, after.state(), after.text());
    DriftFinding over = after.history().get(0);
    assertEquals(DriftFinding.Kind.CREEP, over.kind());
    assertNotNull(over.until());
    assertEquals(0.02, over.change(), 0.006);
    Double pace = after.microsPerPiece();
    assertNotNull(pace);
    assertEquals(60e6, pace, 1);
  }

  /** A radius of 1,800 mm whose curvature rises by 1 %. */
  @Test
  void aChangeOfCurvatureInRadius() {
    assertEquals(-17.8218, DriftFinding.radiusMm(0.01, 1800), 1e-4);
  }

  /** Seeded and short; the long form is the benchmark VerdictRates. */
  @Test
  void creepWithCorrectionsIsNamedCreepAndNotJump() {
    for (double creep : new double[] {1, 2, 4}) {
      Course course = Course.creeping(creep).correctedWhenOff(1.2);
      Rate named = MachineRates.looks(course, 20, 31, 100, 400, 50).named(State.CREEPING);
      assertTrue(named.percent() >= 85, creep + ": " + named);
      assertTrue(named.of() >= 20, creep + ": " + named);
    }
  }

  @Test
  void creepThatACorrectionEndedIsSteadyAgain() {
    MachineStatistics machine = machine(4, 100, piece -> 0.02 * piece / 100);
    assertEquals(State.CREEPING, machine.verdict(0.01).state());
    machine.happened(correction(300));
    MachineVerdict just = machine.verdict(0.01);
    assertEquals(State.CREEPING, just.state(), just.text());
    Well19937c random = new Well19937c(40);
    for (int piece = 1; piece <= 40; piece++) {
      machine.add(99, piece, piece, SCATTER * random.nextGaussian());
    }
    machine.endPiece();
    assertEquals(State.STEADY, machine.verdict(0.01).state(), machine.verdict(0.01).text());
  }

  @Test
  void fewPiecesSinceTheSettingOfASteadyMachineAreTooFew() {
    MachineStatistics machine = machine(6, 60, piece -> 0);
    machine.happened(correction(180));
    MachineVerdict verdict = machine.verdict(0.01);
    assertEquals(State.TOO_FEW, verdict.state());
    assertNull(verdict.slope());
    assertEquals(60, machine.drift("m", 0.01).jobs().size(), 45, "earlier pieces are drawn");
  }

  /** The same 1 % where a steady machine is set again each 15 pieces. */
  @Test
  void steadyMachineThatIsSetOftenStaysQuiet() {
    int alarms = 0;
    int machines = 1000;
    for (int seed = 0; seed < machines; seed++) {
      State state = corrected(seed, 200, 15, 0).verdict(null).state();
      alarms += state == State.CREEPING || state == State.JUMPED ? 1 : 0;
    }
    assertTrue(alarms <= machines * 0.01 + 3 * Math.sqrt(machines * 0.01), alarms + " alarms");
  }

  @Test
  void checkpointGivesTheSameVerdict() {
    MachineStatistics machine = machine(5, 1000, piece -> 0.000005 * piece);
    machine.happened(correction(3000));
    machine.add(77, 1, 1, 0.001);
    machine.add(77, 2, 2, 0.002);
    MachineStatistics restored = MachineStatistics.restore(machine.checkpoint());
    assertEquals(machine.verdict(0.01), restored.verdict(0.01));
    assertTrue(machine.checkpoint().length < 20_000);
  }
}
