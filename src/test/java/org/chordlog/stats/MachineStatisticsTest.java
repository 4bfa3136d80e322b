package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.MachineVerdict.State;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A machine over its jobs: 0.3 % scatter from piece to piece, jobs of 20 pieces, three readings.
 */
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
    assertTrue(slope.lower() < 0.01 && 0.01 < slope.upper(), verdict.text());
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

  @Test
  void correctionStartsAfresh() {
    MachineStatistics machine = machine(4, 100, piece -> 0.02 * piece / 100);
    machine.happened(
        new JobEvent(1, 1, "m", JobEvent.Kind.CORRECTION, 300, 1, 2.0, 1.5, "", "", "me"));
    MachineVerdict verdict = machine.verdict(0.01);
    assertEquals(State.TOO_FEW, verdict.state());
    assertNull(verdict.slope());
  }

  @Test
  void checkpointGivesTheSameVerdict() {
    MachineStatistics machine = machine(5, 1000, piece -> 0.000005 * piece);
    MachineStatistics restored = MachineStatistics.restore(machine.checkpoint());
    assertEquals(machine.verdict(0.01), restored.verdict(0.01));
    assertTrue(machine.checkpoint().length < 20_000);
  }
}
