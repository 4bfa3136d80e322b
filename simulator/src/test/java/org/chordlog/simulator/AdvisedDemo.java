package org.chordlog.simulator;

import java.util.List;
import java.util.Random;
import org.chordlog.correction.Aim;
import org.chordlog.correction.Corrector;
import org.chordlog.correction.GainPrior;
import org.chordlog.correction.MachineScale;
import org.chordlog.correction.Notice;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.Told;
import org.chordlog.correction.Told.Correction;
import org.chordlog.correction.Tuning;

/** A scenario's machine, bent piece by piece with the advice that its readings give. */
final class AdvisedDemo {
  /** About what seat, skew and resolution make of a reading of the demo. */
  private static final double READING_MM = 0.6;

  final Scenario scenario;
  final Aim aim;
  final Corrector corrector;
  private final VirtualMachine machine;
  private final Random readings;
  private int piece;

  /** On the rollers' scale. */
  private double setting;

  AdvisedDemo(Scenario scenario, long seed) {
    this.scenario = scenario;
    Scenario.Order job = scenario.job();
    aim = Aim.symmetric(job.targetMm(), job.toleranceMm());
    machine = new VirtualMachine(scenario, seed);
    setting = scenario.machine().settingMm();
    readings = new Random(seed + 1);
    corrector = new Corrector(dial(scenario), Tuning.usual());
    String lot = scenario.lots().get(0).name();
    corrector.tell(new Told.JobStart(1, aim, job.part(), job.tube().toString(), lot, null));
  }

  /** As the demo describes it: what the chord of the rollers says, ± 30 %. */
  private static MachineScale dial(Scenario scenario) {
    double half = scenario.machine().halfDistanceMm();
    double gain = 2 / (half * half);
    return new MachineScale(
        "dial", "mm", 0.005, MachineScale.Tighter.HIGHER, 0, null, new GainPrior(gain, 0.3 * gain));
  }

  /** The next piece, with what the scenario has happen before it. */
  void bend() {
    piece++;
    scenario.lots().stream()
        .filter(lot -> lot.fromPiece() == piece && piece > 1)
        .forEach(lot -> corrector.tell(new Told.Lot(lot.name())));
    scenario.corrections().stream()
        .filter(each -> each.beforePiece() == piece)
        .forEach(each -> corrector.tell(Correction.by(each.byMm())));
    double radius = machine.bend().get(0).centrelineRadiusMm();
    double read = radius + READING_MM * readings.nextGaussian();
    corrector.tell(new Told.Piece(piece, List.of(PieceReading.radius(read, READING_MM))));
  }

  AdvisedDemo bend(int pieces) {
    for (int i = 0; i < pieces; i++) {
      bend();
    }
    return this;
  }

  /** The same with an operator who does what is advised. */
  AdvisedDemo follow(int pieces) {
    for (int i = 0; i < pieces; i++) {
      bend();
      Double amount = corrector.advice().amount();
      if (amount != null) {
        move(amount, true);
      }
    }
    return this;
  }

  /** Moves the rollers by that much on their scale. */
  void move(double amount, boolean recorded) {
    int unused = machine.move(amount);
    if (recorded) {
      corrector.tell(Correction.between(setting, setting + amount));
    }
    setting += amount;
  }

  boolean asks(Notice.Kind kind) {
    return corrector.snapshot().notices().stream().anyMatch(each -> each.kind() == kind);
  }
}
