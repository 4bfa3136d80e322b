package org.chordlog.correction;

/**
 * What one unit of the scale does: change of curvature, 1/mm, and of radius at the target, mm, each
 * with its standard uncertainty; {@code known} once amounts can be named.
 */
public record GainEstimate(
    double perMmPerUnit,
    double standardUncertaintyPerMmPerUnit,
    double radiusMmPerUnit,
    double standardUncertaintyMmPerUnit,
    boolean known) {
  static GainEstimate of(Aim aim, Belief belief) {
    return new GainEstimate(
        aim.perMm(belief.gain()),
        aim.perMm(belief.gainUncertainty()),
        -aim.mm(belief.gain()),
        aim.mm(belief.gainUncertainty()),
        !belief.blind());
  }
}
