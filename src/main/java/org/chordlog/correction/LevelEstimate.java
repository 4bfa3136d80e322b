package org.chordlog.correction;

/**
 * Where the pieces are: deviation in permil of curvature (positive too tight) and in mm of radius
 * (radius less target, positive too open), each with its standard uncertainty. The uncertainty that
 * all readings of a gauge have in common is not in it.
 */
public record LevelEstimate(
    double permil,
    double standardUncertaintyPermil,
    double radiusMm,
    double levelMm,
    double standardUncertaintyMm) {
  static LevelEstimate of(Aim aim, double permil, double standardUncertainty) {
    double radius = aim.radiusMm(permil);
    double ratio = Double.isInfinite(radius) ? 1 : radius / aim.targetMm();
    double mm = aim.mm(standardUncertainty) * ratio * ratio; // dR = −R² dκ
    return new LevelEstimate(permil, standardUncertainty, radius, radius - aim.targetMm(), mm);
  }

  boolean tight() {
    return permil > 0;
  }
}
