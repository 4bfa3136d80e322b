package org.chordlog.chart;

import java.util.List;
import java.util.Random;
import org.chordlog.correction.Aim;
import org.chordlog.correction.Corrector;
import org.chordlog.correction.GainPrior;
import org.chordlog.correction.MachineScale;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.Told;
import org.chordlog.correction.Tuning;

/** Trails of real filters on an invented machine. */
final class Trails {
  private static final double TARGET_MM = 1800;
  private static final double MM_PER_UNIT = 80;

  private Trails() {}

  /** So many pieces, the advice always followed. */
  static CorrectionTrail run(int pieces) {
    MachineScale dial =
        new MachineScale(
            "dial",
            "mm",
            0.01,
            MachineScale.Tighter.HIGHER,
            0,
            null,
            GainPrior.ofRadiusChange(-MM_PER_UNIT, TARGET_MM, 0.3));
    Corrector corrector = new Corrector(dial, Tuning.usual());
    corrector.tell(new Told.JobStart(1, Aim.symmetric(TARGET_MM, 12), "hoop", "tube", "A", null));
    Random random = new Random(7);
    double offMm = 11;
    for (int piece = 1; piece <= pieces; piece++) {
      if (piece == 21) {
        corrector.tell(new Told.Lot("B"));
        offMm -= 8;
      }
      double radius = TARGET_MM + offMm + 3 * random.nextGaussian();
      corrector.tell(new Told.Piece(piece, List.of(PieceReading.radius(radius, 0.6))));
      Double amount = corrector.advice().amount();
      if (amount != null) {
        corrector.tell(Told.Correction.by(amount));
        offMm -= MM_PER_UNIT * amount;
      }
    }
    return CorrectionTrail.of("rolls 1", corrector.snapshot());
  }
}
