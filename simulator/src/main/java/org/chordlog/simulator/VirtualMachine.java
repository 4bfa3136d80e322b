package org.chordlog.simulator;

import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.chordlog.simulator.Scenario.Lot;

/** Bends one piece after the other: setting, creep, lot and chance make its radius. */
final class VirtualMachine {
  private final Scenario scenario;
  private final Rollers rollers;
  private final SpringBack springBack;
  private final Random random;

  /** Of its own, so that pieces are alike whatever an operator does. */
  private final Random moves;

  private final MoveScale scale;
  private int piece;
  private double movedMm;
  private double way;

  VirtualMachine(Scenario scenario, long seed) {
    this(scenario, MoveScale.EXACT, seed);
  }

  VirtualMachine(Scenario scenario, MoveScale scale, long seed) {
    this.scale = scale;
    moves = new Random(~seed);
    this.scenario = scenario;
    rollers = new Rollers(scenario.machine().halfDistanceMm(), scenario.machine().rollRadiusMm());
    var tube = scenario.job().tube();
    springBack =
        new SpringBack(
            scenario.machine().youngMpa(), (tube.outsideDiameterMm() - tube.wallMm()) / 2);
    random = new Random(seed);
  }

  /** The next piece at each of its positions. */
  synchronized List<Workpiece> bend() {
    piece++;
    Lot lot = lot();
    double setting = settingMm() + scenario.machine().settingSdMm() * random.nextGaussian();
    double yield = lot.yieldMpa() + lot.yieldSdMpa() * random.nextGaussian();
    double radius = radiusMm(setting, yield);
    return scenario.job().positions().stream().map(p -> at(p, lot, radius)).toList();
  }

  /** Moves the middle roller by that much on its scale; the first piece that is bent so. */
  synchronized int move(double amount) {
    double wanted = Math.signum(amount * scale.unitMm());
    movedMm += scale.movedMm(amount, way != 0 && wanted == -way, moves.nextGaussian());
    way = wanted == 0 ? way : wanted;
    return piece + 1;
  }

  /** Number of the piece that was bent last, 0 before the first. */
  synchronized int newest() {
    return piece;
  }

  /** Bends all pieces before that one. */
  void goOnFrom(int firstPiece) {
    while (piece < firstPiece - 1) {
      bend();
    }
  }

  private Workpiece at(String position, Lot lot, double radius) {
    double sd = scenario.machine().alongPieceSdPercent() / 100;
    return new Workpiece(piece, position, lot.name(), radius * (1 + sd * random.nextGaussian()));
  }

  double radiusMm(double settingMm, double yieldMpa) {
    double loaded = rollers.loadedRadiusMm(settingMm, scenario.job().tube().outsideDiameterMm());
    return 1 / springBack.unloadedPerMm(1 / loaded, yieldMpa);
  }

  private double settingMm() {
    var machine = scenario.machine();
    double since = Math.max(0, piece - machine.creepFromPiece());
    double creep = machine.creepMm() * (1 - Math.exp(-since / machine.creepPieces()));
    return machine.settingMm() + creep + corrected() + movedMm;
  }

  private double corrected() {
    return scenario.corrections().stream()
        .filter(correction -> correction.beforePiece() <= piece)
        .mapToDouble(Scenario.Correction::byMm)
        .sum();
  }

  private Lot lot() {
    return scenario.lots().stream()
        .filter(lot -> lot.fromPiece() <= piece)
        .max(Comparator.comparingInt(Lot::fromPiece))
        .orElseThrow();
  }
}
