package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.stats.drift.MachineVerdict.State;
import org.junit.jupiter.api.Test;

/** The view of the machine on the scenario of the demo, and on a steady one. */
final class MachineViewTest {
  private static final int SEEDS = 30;
  private static final double TOLERANCE = 12.0 / 1800;

  /** Verdicts by the newest piece. */
  private static Map<Integer, MachineVerdict> verdicts(Scenario scenario, long seed, int... at) {
    Map<Integer, MachineVerdict> verdicts = new java.util.TreeMap<>();
    new SimulatedMachine(scenario)
        .play(
            at[at.length - 1],
            seed,
            (piece, machine) -> {
              for (int each : at) {
                if (piece == each) {
                  verdicts.put(piece, machine.verdict(TOLERANCE));
                }
              }
            });
    return verdicts;
  }

  private static MachineVerdict at(Map<Integer, MachineVerdict> verdicts, int piece) {
    MachineVerdict found = verdicts.get(piece);
    assertNotNull(found, "piece " + piece + " was not captured");
    return found;
  }

  private static long since(MachineVerdict verdict) {
    Long since = verdict.sincePiece();
    assertNotNull(since, verdict.text());
    return since;
  }

  /**
   * Creep from piece 41 on (two thirds within 30 pieces) before the correction at 86; a lot that
   * springs back more from 121 on; quiet before, between and after.
   */
  @Test
  void findsCreepAndLotOfTheDemo() throws IOException {
    Scenario demo = ScenarioFile.read(ScenarioFile.DEMO);
    Map<State, Integer> creep = new EnumMap<>(State.class);
    List<Long> creepSince = new ArrayList<>();
    int lots = 0;
    int early = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      Map<Integer, MachineVerdict> seen = verdicts(demo, seed, 40, 85, 145, 200);
      early += at(seen, 40).state() == State.STEADY ? 0 : 1;
      creep.merge(at(seen, 85).state(), 1, Integer::sum);
      creepSince.add(since(at(seen, 85)));
      MachineVerdict lot = at(seen, 145);
      lots += lot.state() == State.JUMPED && Math.abs(since(lot) - 121) <= 3 ? 1 : 0;
      assertEquals(State.STEADY, at(seen, 200).state(), at(seen, 200).text());
    }
    assertTrue(early <= 2, early + " alarms before the creep");
    assertEquals(null, creep.get(State.STEADY), creep.toString());
    assertTrue(creep.getOrDefault(State.CREEPING, 0) >= SEEDS * 2 / 3, creep.toString());
    creepSince.sort(null);
    assertEquals(41, creepSince.get(SEEDS / 2), 12.0, creepSince.toString());
    assertTrue(lots >= SEEDS * 9 / 10, lots + " lots");
  }

  /** One lot, no creep, no correction. */
  @Test
  void steadyScenarioStaysQuiet() throws IOException {
    Scenario steady = steady(ScenarioFile.read(ScenarioFile.DEMO));
    int alarms = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      for (MachineVerdict verdict : verdicts(steady, seed, 20, 50, 100, 150).values()) {
        alarms += verdict.state() == State.STEADY ? 0 : 1;
      }
    }
    assertTrue(alarms <= 4, alarms + " alarms of " + 4 * SEEDS);
  }

  private static Scenario steady(Scenario demo) {
    Scenario.Roller roller = demo.machine();
    return new Scenario(
        demo.name(),
        demo.seed(),
        demo.job(),
        demo.bridge(),
        demo.indicator(),
        new Scenario.Roller(
            roller.halfDistanceMm(),
            roller.rollRadiusMm(),
            roller.youngMpa(),
            roller.settingMm(),
            roller.settingSdMm(),
            0,
            roller.creepFromPiece(),
            roller.creepPieces(),
            roller.alongPieceSdPercent()),
        demo.lots().subList(0, 1),
        List.of(),
        demo.operator(),
        List.of());
  }
}
