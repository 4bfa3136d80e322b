package org.chordlog.correction;

import java.util.List;
import org.chordlog.correction.MachineScale.Tighter;
import org.chordlog.correction.Told.Correction;
import org.chordlog.correction.Told.Piece;

/** A corrector with short words for tests: 1800 ± 12 mm, deviations in permil, dial in mm. */
final class Bench {
  static final double TARGET = 1800;
  static final Aim AIM = Aim.symmetric(TARGET, 12);
  static final double UNIT = 1 / 1000.0 / TARGET;
  static final GainPrior KNOWN = new GainPrior(45 * UNIT, 4.5 * UNIT);

  final Corrector corrector;
  private int piece;

  Bench(MachineScale scale) {
    corrector = new Corrector(scale, Tuning.usual());
  }

  static MachineScale dial(GainPrior gain) {
    return new MachineScale("dial", "mm", 0.01, Tighter.UNKNOWN, 0, 0.01, gain);
  }

  static Bench known() {
    return new Bench(dial(KNOWN)).job("A");
  }

  Bench job(String lot) {
    piece = 0;
    corrector.tell(new Told.JobStart(1, AIM, "hoop", "tube", lot, null));
    return this;
  }

  static PieceReading reading(double permil) {
    return new PieceReading("", 1, (1 + permil / 1000) / TARGET, UNIT / 3, false);
  }

  Bench pieces(double... permil) {
    for (double each : permil) {
      corrector.tell(new Piece(++piece, List.of(reading(each))));
    }
    return this;
  }

  Bench piece(PieceReading... readings) {
    corrector.tell(new Piece(++piece, List.of(readings)));
    return this;
  }

  Bench corrected(double before, double after) {
    corrector.tell(Correction.between(before, after));
    return this;
  }

  Bench tell(Told told) {
    corrector.tell(told);
    return this;
  }

  Advice advice() {
    return corrector.advice();
  }

  Belief belief() {
    return corrector.state().filter().belief();
  }

  List<Notice.Kind> notices() {
    return corrector.snapshot().notices().stream().map(Notice::kind).toList();
  }
}
