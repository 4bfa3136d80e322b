package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * Radius on the specified face, mm, with its coverage interval at 95.45 %, which may be asymmetric
 * even in curvature, because skew biases one way. {@code upperMm} is null where the interval is
 * open towards flat; a flat has null {@code radiusMm} and {@code lowerMm} as the largest radius
 * that could still be told from flat. {@code curvaturePerMm} is signed: positive on a convex face.
 */
public record RadiusEstimate(
    @Nullable Double radiusMm,
    double lowerMm,
    @Nullable Double upperMm,
    double curvaturePerMm,
    double standardUncertaintyPerMm,
    double coverageFactor,
    double degreesOfFreedom) {
  public boolean flat() {
    return radiusMm == null;
  }

  /**
   * Middle of the interval in curvature, 1/mm, positive in the sense of the bend: the value less
   * its mean bias. 0 for a flat.
   */
  public double centrePerMm() {
    return flat() ? 0 : 1 / lowerMm - coverageFactor * standardUncertaintyPerMm;
  }
}
