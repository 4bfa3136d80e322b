package org.chordlog.cli.correction;

import org.chordlog.cli.common.LengthOptions;
import org.chordlog.correction.closing.Ring;

/** A full ring at one radius; gaps are negative where the ends overlap. */
record RingAnswer(
    double targetMm,
    double radiusMm,
    double radiusStandardUncertaintyMm,
    double arcGapMm,
    double straightGapMm,
    double kinkDegrees,
    double gapStandardUncertaintyMm)
    implements ClosingAnswer {
  static RingAnswer of(Ring ring, double radiusMm, double u) {
    return new RingAnswer(
        ring.targetMm(),
        radiusMm,
        u,
        ring.arcGapMm(radiusMm),
        ring.straightGapMm(radiusMm),
        ring.kinkDegrees(radiusMm),
        Ring.gapUncertaintyMm(u));
  }

  @Override
  public String text(LengthOptions lengths) {
    String how = arcGapMm < 0 ? "ends overlap by " : "open by ";
    return "Ring for "
        + lengths.statedWithUnit(targetMm)
        + " bent to "
        + ClosingAnswer.with(lengths, radiusMm, radiusStandardUncertaintyMm)
        + ": "
        + how
        + ClosingAnswer.with(lengths, Math.abs(arcGapMm), gapStandardUncertaintyMm)
        + " along the arc, "
        + lengths.text(Math.abs(straightGapMm), 2)
        + " straight; kink "
        + ClosingAnswer.degrees(kinkDegrees)
        + ".";
  }
}
