package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * Radius on the specified face, mm, with its coverage interval at 95.45 %. {@code upperMm} is null
 * where the interval is open towards flat; a flat has null {@code radiusMm} and {@code lowerMm} as
 * the largest radius that could still be told from flat. {@code curvaturePerMm} is signed: positive
 * on a convex face.
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
}
