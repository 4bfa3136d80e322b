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
  private int piece;

  VirtualMachine(Scenario scenario, long seed) {
    this.scenario = scenario;
    rollers = new Rollers(scenario.machine().halfDistanceMm(), scenario.machine().rollRadiusMm());
    var tube = scenario.job().tube();
    springBack =
        new SpringBack(
            scenario.machine().youngMpa(), (tube.outsideDiameterMm() - tube.wallMm()) / 2);
    random = new Random(seed);
  }

  /** The next piece at each of its positions. */
  List<Workpiece> bend() {
    piece++;
    Lot lot = lot();
    double setting = settingMm() + scenario.machine().settingSdMm() * random.nextGaussian();
    double yield = lot.yieldMpa() + lot.yieldSdMpa() * random.nextGaussian();
    double radius = radiusMm(setting, yield);
    return scenario.job().positions().stream().map(p -> at(p, lot, radius)).toList();
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
    return machine.settingMm() + creep + corrected();
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
