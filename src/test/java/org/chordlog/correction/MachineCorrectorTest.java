package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import org.chordlog.correction.Advice.Action;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.JobEvent.Kind;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Recorded;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Readings and events as a machine's stations announce them. */
final class MachineCorrectorTest {
  private static final JobStart JOB = new JobStart(7, Bench.AIM, "hoop", "tube", "A", null);
  private final MachineCorrector machine =
      new MachineCorrector(Bench.dial(Bench.KNOWN), Tuning.usual());
  private long events;

  private void read(JobStart job, int piece, String position, double permil) {
    machine.reading(job, piece, Bench.reading(permil).at(position, 1));
  }

  private void happened(
      long job, Kind kind, @Nullable Double before, @Nullable Double after, String lot) {
    events++;
    machine.happened(
        new JobEvent(
            events,
            job,
            "roller 1",
            kind,
            0,
            new JobEvent.Content(before, after, lot, ""),
            new Recorded(events, "me")));
  }

  @Test
  void readingsBecomePieces() {
    Bench told = Bench.known();
    for (int piece = 1; piece <= 6; piece++) {
      read(JOB, piece, "start", piece);
      read(JOB, piece, "end", piece + 1);
      told.piece(Bench.reading(piece).at("start", 1), Bench.reading(piece + 1).at("end", 1));
    }
    assertEquals(told.corrector.snapshot().advice(), machine.snapshot("").advice());
    byte[] before = machine.checkpoint();
    CorrectionSnapshot unused = machine.snapshot("");
    assertNotNull(unused);
    assertArrayEquals(before, machine.checkpoint(), "looking changes nothing");
  }

  @Test
  void eventsAreTold() {
    read(JOB, 1, "", 9);
    read(JOB, 2, "", 9);
    assertEquals(Action.CORRECT, machine.snapshot("").advice().action());
    happened(7, Kind.CORRECTION, 10.0, 9.8, "");
    assertEquals(Action.TOO_EARLY, machine.snapshot("").advice().action());
    assertEquals(9.8, machine.snapshot("").setting());
    read(JOB, 3, "", 0.2);
    assertEquals(Action.LEAVE, machine.snapshot("").advice().action());
    happened(7, Kind.NOTE, null, null, "");
    assertEquals(Action.LEAVE, machine.snapshot("").advice().action());
    happened(7, Kind.MATERIAL_LOT, null, null, "B");
    assertEquals(Action.TOO_EARLY, machine.snapshot("").advice().action());
    happened(7, Kind.MATERIAL_LOT, null, null, "B");
    happened(7, Kind.SET_UP, null, 12.0, "");
    assertEquals(12.0, machine.snapshot("").setting());
    happened(7, Kind.CORRECTION, 12.0, null, "");
    assertNull(machine.snapshot("").setting());
  }

  /** A piece's readings after a correction were bent before it. */
  @Test
  void lateReadingsOfAPieceAreLeftOut() {
    read(JOB, 1, "start", 9);
    happened(7, Kind.CORRECTION, 10.0, 9.8, "");
    read(JOB, 1, "end", 9);
    assertEquals(Action.TOO_EARLY, machine.snapshot("").advice().action());
    read(JOB, 2, "start", 0);
    assertEquals(Action.LEAVE, machine.snapshot("").advice().action());
  }

  @Test
  void eventsOfAJobThatIsStillToComeWaitForIt() {
    read(JOB, 1, "", 9);
    happened(8, Kind.SET_UP, null, 11.0, "");
    happened(8, Kind.MATERIAL_LOT, null, null, "C");
    CorrectionSnapshot between = machine.snapshot("");
    assertEquals("Set up: measure the first piece.", between.advice().text().toString());
    MachineCorrector kept = MachineCorrector.restore(machine.checkpoint(), Tuning.usual());
    JobStart next = new JobStart(8, Bench.AIM, "hoop", "tube", "B", null);
    for (MachineCorrector each : new MachineCorrector[] {machine, kept}) {
      each.reading(next, 1, Bench.reading(0.3));
      assertEquals(11.0, each.snapshot("").setting());
      assertEquals("C", each.snapshot("").trail().get(4).where().lot());
    }
    assertArrayEquals(machine.checkpoint(), kept.checkpoint());
  }

  @Test
  void anotherTargetOfTheSameJob() {
    read(JOB, 1, "", 0);
    read(JOB, 2, "", 0);
    read(new JobStart(7, Aim.symmetric(1900, 12), "hoop", "tube", "A", null), 3, "", 0);
    assertEquals(-100, Objects.requireNonNull(machine.snapshot("").advice().level()).levelMm(), 2);
  }

  @Test
  void theStartOfAPieceForetellsItsRest() {
    for (int piece = 1; piece <= 6; piece++) {
      read(JOB, piece, "start", 0.4 * piece);
      read(JOB, piece, "end", 1);
    }
    assertNull(machine.snapshot("").rest());
    read(JOB, 7, "start", 12);
    assertNotNull(machine.snapshot("").rest());
    assertNull(machine.snapshot("the zero is stale.").rest());
    read(JOB, 7, "end", 12);
    assertNull(machine.snapshot("").rest());
  }

  @Test
  void aStationsRadiusInTheSenseOfTheBend() {
    RadiusEstimate inner = new RadiusEstimate(1800.0, 1790, 1810.0, -1 / 1800.0, 1e-6, 2, 50);
    assertEquals(1 / 1800.0, PieceReading.of(inner, Face.INNER, 1e-7).perMm());
    RadiusEstimate outer = new RadiusEstimate(null, 1e5, null, -1e-6, 1e-6, 2, 50);
    assertEquals(-1e-6, PieceReading.of(outer, Face.OUTER, 1e-7).perMm());
    assertTrue(PieceReading.of(outer, Face.OUTER, 1e-7).flat());
  }

  @Test
  void scaleAndStartAreHandedOn() {
    machine.start(JOB);
    machine.start(JOB);
    assertNull(machine.startSetting(JOB));
    machine.scale(Bench.dial(Bench.KNOWN));
    machine.scale(MachineScale.unknown());
    read(JOB, 1, "", 12);
    assertEquals(Action.AMOUNT_UNKNOWN, machine.snapshot("").advice().action());
    byte[] state = machine.checkpoint();
    state[3]++;
    assertThrows(BadInput.class, () -> MachineCorrector.restore(state, Tuning.usual()));
  }
}
