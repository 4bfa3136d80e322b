package org.chordlog.radius;

import org.chordlog.measure.RadiusEstimate;
import org.jspecify.annotations.Nullable;

/**
 * Curvature in the sense of the bend on the specified face, 1/mm: mean, standard uncertainty and
 * the probabilistically symmetric 95.45 % interval (JCGM 101:2008, 7.7).
 */
public record MonteCarloResult(
    int trials,
    long seed,
    double meanPerMm,
    double standardUncertaintyPerMm,
    double lowPerMm,
    double highPerMm) {

  /** Lower end in radius, mm. */
  public double lowerMm() {
    return highPerMm > 0 ? 1 / highPerMm : 0;
  }

  /** Upper end in radius, mm; null when open towards flat. */
  public @Nullable Double upperMm() {
    return lowPerMm > 0 ? 1 / lowPerMm : null;
  }

  /** Larger distance of the two ends from the formula's, as a share of the formula's u. */
  public double endsApart(RadiusEstimate estimate) {
    double u = estimate.standardUncertaintyPerMm();
    double half = estimate.coverageFactor() * u;
    double low = Math.abs(estimate.centrePerMm() - half - lowPerMm);
    double high = Math.abs(estimate.centrePerMm() + half - highPerMm);
    return u == 0 ? 0 : Math.max(low, high) / u;
  }

  /** Whether the drawn interval lies within the formula's, to a tenth of its u. */
  public boolean within(RadiusEstimate estimate) {
    double u = estimate.standardUncertaintyPerMm();
    double half = (estimate.coverageFactor() + 0.1) * u;
    double centre = estimate.centrePerMm();
    return lowPerMm >= centre - half && highPerMm <= centre + half;
  }

  /**
   * Whether both ends agree within half a unit of the last of that many significant digits of u
   * (JCGM 101:2008, 8.1, 7.9.2).
   */
  public boolean confirms(RadiusEstimate estimate, int digits) {
    double u = estimate.standardUncertaintyPerMm();
    double unit = Math.pow(10, Math.floor(Math.log10(u)) - digits + 1);
    return endsApart(estimate) * u <= unit / 2;
  }
}
