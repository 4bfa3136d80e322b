package org.chordlog.cli.correction;

import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.Decimals;

/** What {@code close} answers; as JSON its components, lengths in mm. */
sealed interface ClosingAnswer permits RingAnswer, UnevenRingAnswer, ArcAnswer, PiecesAnswer {
  String text(LengthOptions lengths);

  /** A length with ± 2 u, where there is any. */
  static String with(LengthOptions lengths, double mm, double standardUncertaintyMm) {
    String value = lengths.textWithUnit(mm, 2);
    return standardUncertaintyMm > 0
        ? value + " (± " + lengths.text(2 * standardUncertaintyMm, 2) + ")"
        : value;
  }

  static String degrees(double degrees) {
    return Decimals.fixed(degrees, 3) + "°";
  }
}
