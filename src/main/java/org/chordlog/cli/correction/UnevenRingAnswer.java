package org.chordlog.cli.correction;

import java.util.List;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.correction.closing.UnevenRing;

/**
 * A ring measured at places round it. {@code pastStartMm}: how far its end passes its start along
 * the ring (negative: falls short); {@code insideMm}: how far the end lies inside of the start
 * (negative: outside), 0 where the places are too few to tell.
 */
record UnevenRingAnswer(
    double targetMm,
    List<Double> radiiMm,
    double meanRadiusMm,
    double kinkDegrees,
    double kinkStandardUncertaintyDegrees,
    double pastStartMm,
    double pastStartStandardUncertaintyMm,
    double insideMm,
    double insideStandardUncertaintyMm)
    implements ClosingAnswer {
  /** {@code each} is the standard uncertainty of each radius, {@code common} that of all, mm. */
  static UnevenRingAnswer of(double targetMm, List<Double> radiiMm, double each, double common) {
    UnevenRing ring = UnevenRing.of(targetMm, radiiMm);
    UnevenRing.Uncertainty u = ring.uncertainty(radiiMm.size(), each, common);
    return new UnevenRingAnswer(
        targetMm,
        radiiMm,
        ring.meanRadiusMm(),
        ring.kinkDegrees(),
        u.kinkDegrees(),
        ring.alongMm(),
        u.alongMm(),
        ring.acrossMm(),
        u.acrossMm());
  }

  @Override
  public String text(LengthOptions lengths) {
    return "Ring for "
        + lengths.statedWithUnit(targetMm)
        + ", measured at "
        + radiiMm.size()
        + " places, "
        + lengths.textWithUnit(meanRadiusMm, 2)
        + " on average: its end "
        + (pastStartMm < 0 ? "falls short of its start by " : "passes its start by ")
        + ClosingAnswer.with(lengths, Math.abs(pastStartMm), pastStartStandardUncertaintyMm)
        + across(lengths)
        + "; kink "
        + ClosingAnswer.degrees(kinkDegrees)
        + ".";
  }

  private String across(LengthOptions lengths) {
    return radiiMm.size() < UnevenRing.LEAST_FOR_ACROSS
        ? " if it is even"
        : " and lies "
            + ClosingAnswer.with(lengths, Math.abs(insideMm), insideStandardUncertaintyMm)
            + (insideMm < 0 ? " outside of it" : " inside of it");
  }
}
