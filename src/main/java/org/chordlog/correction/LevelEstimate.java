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
    return new LevelEstimate(
        permil, standardUncertainty, radius, radius - aim.targetMm(), aim.mm(standardUncertainty));
  }

  boolean tight() {
    return permil > 0;
  }
}
