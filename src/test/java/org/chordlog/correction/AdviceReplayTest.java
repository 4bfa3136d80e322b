package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.chordlog.correction.Advice.Action;
import org.chordlog.correction.MachineCorrector.Described;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.JobEvent.Kind;
import org.chordlog.measure.Recorded;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Pieces rolled again, scales described over time, and the same digits when all is done again. */
final class AdviceReplayTest {
  private static final List<Kind> KINDS = List.of(Kind.CORRECTION, Kind.MATERIAL_LOT, Kind.SET_UP);
  private static final JobStart JOB = new JobStart(7, Bench.AIM, "hoop", "tube", "A", null);

  /** Something that happens at a time, which is also its place in the order. */
  private interface Step {
    void at(MachineCorrector machine, long micros);
  }

  /**
   * One machine is told everything at one go with all scales known from the start; the other one is
   * looked at, stopped and started again, and hears of each scale only when it is described.
   */
  @Property(tries = 80)
  void theSameBitsAfterRecomputation(@ForAll long seed) {
    Random random = new Random(seed);
    List<Step> steps = steps(random, 40 + random.nextInt(80));
    List<Described> all = scales(random, steps.size());
    List<Described> known = new ArrayList<>();
    MachineCorrector straight = new MachineCorrector(Tuning.usual(), () -> all);
    MachineCorrector often = new MachineCorrector(Tuning.usual(), () -> known);
    for (int i = 0; i < steps.size(); i++) {
      long now = i;
      steps.get(i).at(straight, now);
      all.stream().skip(known.size()).filter(s -> s.fromMicros() <= now).forEach(known::add);
      steps.get(i).at(often, now);
      if (random.nextInt(3) == 0) {
        assertNotNull(often.snapshot(""));
        often = MachineCorrector.restore(often.checkpoint(), Tuning.usual(), () -> known);
      }
    }
    assertArrayEquals(straight.checkpoint(), often.checkpoint());
    assertEquals(straight.snapshot(""), often.snapshot(""));
  }

  private static List<Described> scales(Random random, int until) {
    List<Described> scales = new ArrayList<>();
    for (int at = random.nextInt(20); at < until; at += 1 + random.nextInt(30)) {
      GainPrior gain = random.nextBoolean() ? Bench.KNOWN : GainPrior.unknown();
      MachineScale dial = Bench.dial(gain);
      scales.add(new Described(random.nextInt(3) == 0 ? MachineScale.unknown() : dial, at));
    }
    return scales;
  }

  private static List<Step> steps(Random random, int count) {
    List<Step> steps = new ArrayList<>();
    int piece = 1;
    int pass = 1;
    for (int i = 0; i < count; i++) {
      switch (random.nextInt(6)) {
        case 0 -> steps.add(event(random));
        case 1 -> pass = Math.min(5, pass + 1);
        default -> {
          piece += random.nextInt(2);
          steps.add(reading(random, piece, pass));
        }
      }
    }
    return steps;
  }

  private static Step reading(Random random, int piece, int pass) {
    PieceReading reading =
        Bench.reading(4 * random.nextGaussian()).at(random.nextBoolean() ? "start" : "end", pass);
    return (machine, micros) -> {
      machine.at(micros);
      machine.reading(JOB, piece, reading);
    };
  }

  private static Step event(Random random) {
    Kind kind = KINDS.get(random.nextInt(KINDS.size()));
    double before = 10 + 0.01 * random.nextInt(5);
    double after = before + 0.01 * random.nextInt(9);
    String lot = "lot " + random.nextInt(3);
    return (machine, micros) -> machine.happened(event(kind, before, after, lot, micros));
  }

  private static JobEvent event(
      Kind kind, @Nullable Double before, @Nullable Double after, String lot, long micros) {
    return new JobEvent(
        micros + 1,
        7,
        "roller 1",
        kind,
        0,
        new JobEvent.Content(before, after, lot, ""),
        new Recorded(micros, "me"));
  }

  private static void read(MachineCorrector machine, int piece, int pass, double permil) {
    machine.reading(JOB, piece, Bench.reading(permil).at("", pass));
  }

  /** It was bent by the rollers as they are now. */
  @Test
  void aPieceRolledAgainAfterACorrectionCounts() {
    MachineCorrector machine = new MachineCorrector(Bench.dial(Bench.KNOWN), Tuning.usual());
    read(machine, 1, 1, 9);
    read(machine, 2, 1, 9);
    machine.happened(event(Kind.CORRECTION, 10.0, 9.8, "", 1));
    read(machine, 2, 1, 9);
    assertEquals(
        Action.TOO_EARLY, machine.snapshot("").advice().action(), "late, not rolled again");
    read(machine, 2, 2, 0.3);
    CorrectionSnapshot now = machine.snapshot("");
    assertEquals(Action.LEAVE, now.advice().action());
    TrailPoint last = now.trail().get(now.trail().size() - 1);
    assertEquals(2, last.where().piece());
    assertEquals(0.3, last.level().reading(), 1e-9);
    read(machine, 3, 1, 0.1);
    assertEquals(Action.LEAVE, machine.snapshot("").advice().action());
  }

  /** Whoever describes a scale later has been setting by it before. */
  @Test
  void whatWasLearnedBeforeTheScaleGotItsNameStays() {
    List<Described> known = new ArrayList<>();
    MachineCorrector machine = new MachineCorrector(Tuning.usual(), () -> known);
    learn(machine);
    GainEstimate learned = Objects.requireNonNull(machine.snapshot("").learned().gain());
    assertTrue(Math.abs(learned.radiusMmPerUnit()) > 2 * learned.standardUncertaintyMmPerUnit());
    known.add(new Described(Bench.dial(GainPrior.unknown()), 100));
    CorrectionSnapshot now = machine.snapshot("");
    assertEquals(learned, now.learned().gain());
    assertEquals("dial", now.learned().scale().name());
    assertNotNull(now.setting());
  }

  @Test
  void anotherUnitHasNothingToDoWithWhatWasLearned() {
    List<Described> known = new ArrayList<>();
    known.add(new Described(Bench.dial(GainPrior.unknown()), 0));
    MachineCorrector machine = new MachineCorrector(Tuning.usual(), () -> known);
    learn(machine);
    GainEstimate learned = machine.snapshot("").learned().gain();
    MachineScale dial = Bench.dial(GainPrior.unknown());
    known.add(
        new Described(
            new MachineScale("dial", "turns", 0, dial.tighter(), 0, null, dial.gain()), 100));
    CorrectionSnapshot now = machine.snapshot("");
    assertNotEquals(learned, now.learned().gain());
    assertEquals(null, now.setting());
  }

  /** A gain stated anew counts where no more than that is known; else the better known one does. */
  @Test
  void theBetterKnownGainCounts() {
    List<Described> known = new ArrayList<>();
    known.add(new Described(Bench.dial(Bench.KNOWN), 0));
    MachineCorrector machine = new MachineCorrector(Tuning.usual(), () -> known);
    read(machine, 1, 1, 0.5);
    double unit = Bench.UNIT;
    known.add(new Described(Bench.dial(new GainPrior(90 * unit, 9 * unit)), 100));
    GainEstimate stated = Objects.requireNonNull(machine.snapshot("").learned().gain());
    assertEquals(-90 * 1.8, stated.radiusMmPerUnit(), 0.1);
    known.add(new Described(Bench.dial(new GainPrior(20 * unit, 10 * unit)), 101));
    assertEquals(stated, machine.snapshot("").learned().gain());
  }

  private static void learn(MachineCorrector machine) {
    double setting = 10;
    double level = 9;
    for (int piece = 1; piece <= 12; piece++) {
      machine.at(piece);
      read(machine, piece, 1, level);
      if (piece % 2 == 0) {
        double move = piece % 4 == 0 ? 0.2 : -0.2;
        machine.happened(event(Kind.CORRECTION, setting, setting + move, "", piece));
        setting += move;
        level += 45 * move;
      }
    }
  }
}
