package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;

/** Rollers moved while a scenario plays. */
final class MovesTest {
  private static Scenario demo() throws IOException {
    return ScenarioFile.read(ScenarioFile.DEMO).withoutCorrections();
  }

  private static double next(VirtualMachine machine) {
    return machine.bend().get(0).centrelineRadiusMm();
  }

  /** The same chance, so that only the move tells two machines apart. */
  @Test
  void aMoveChangesTheNextPieceByWhatTheRollersGeometrySays() throws IOException {
    VirtualMachine left = new VirtualMachine(demo(), 7);
    VirtualMachine moved = new VirtualMachine(demo(), 7);
    assertEquals(next(left), next(moved));
    assertEquals(2, moved.move(0.1));
    double change = next(moved) - next(left);
    // 81 mm of radius for one mm at 1800 mm: slope of this machine's own formulas
    double slope = (left.radiusMm(25.63, 235) - left.radiusMm(25.53, 235)) / 0.1;
    assertEquals(0.1 * slope, change, 0.3);
  }

  @Test
  void aScaleMayCountTheOtherWayAndInAnotherUnit() throws IOException {
    VirtualMachine turns = new VirtualMachine(demo(), new MoveScale(-0.5, 0, 0), 7);
    VirtualMachine mm = new VirtualMachine(demo(), 7);
    turns.move(-0.2);
    mm.move(0.1);
    assertEquals(next(mm), next(turns), 1e-9);
  }

  @Test
  void aChangeOfDirectionLosesItsPlay() {
    MoveScale scale = new MoveScale(1, 0.05, 0);
    assertEquals(0.1, scale.movedMm(0.1, false, 0), 1e-12);
    assertEquals(-0.05, scale.movedMm(-0.1, true, 0), 1e-12);
    assertEquals(0, scale.movedMm(-0.03, true, 0), 1e-12);
  }

  @Test
  void movesAreOffByChance() {
    assertEquals(0.12, new MoveScale(1, 0, 0.01).movedMm(0.1, false, 2), 1e-12);
    assertThrows(BadInput.class, () -> new MoveScale(0, 0, 0));
    assertThrows(BadInput.class, () -> new MoveScale(1, -1, 0));
  }

  @Test
  void aTypedMoveIsAnsweredWithTheFirstPieceThatIsBentSo() throws IOException {
    try (Simulator simulator =
        Simulator.onSocket(demo(), MoveScale.EXACT, 1, 7, 0, contact -> {})) {
      assertEquals(Simulator.MOVED + 1, simulator.told("move 0.05"));
      BadInput refused = assertThrows(BadInput.class, () -> simulator.told("move far"));
      assertTrue(Objects.requireNonNull(refused.getMessage()).contains("move"), refused::toString);
      assertEquals("", simulator.told("noise 0"));
      assertEquals(Simulator.NEWEST + 0, simulator.told("piece"));
      simulator.goOnFrom(4);
      assertEquals(Simulator.NEWEST + 3, simulator.told("piece"));
    }
  }

  @Test
  void withoutItsCorrectionsAScenarioIsElseTheSame() throws IOException {
    Scenario written = ScenarioFile.read(ScenarioFile.DEMO);
    assertTrue(written.withoutCorrections().corrections().isEmpty());
    assertEquals(written.lots(), written.withoutCorrections().lots());
  }
}
