package org.chordlog.correction.closing;

import org.chordlog.measure.Check;

/**
 * A bent piece of a ring: developed length and mean radius, mm (the inverse of its mean curvature),
 * with the part of that radius's standard uncertainty that is its own.
 */
public record BentPiece(
    String name, double developedMm, double radiusMm, double standardUncertaintyMm) {
  public BentPiece {
    Check.positive("developedMm", developedMm);
    Check.positive("radiusMm", radiusMm);
    Check.notNegative("standardUncertaintyMm", standardUncertaintyMm);
  }

  /** Angle that it turns through, S/R. */
  double angleRadians() {
    return developedMm / radiusMm;
  }

  /** Of that angle, from its radius. */
  double angleUncertainty(double radiusUncertaintyMm) {
    return angleRadians() / radiusMm * radiusUncertaintyMm;
  }
}
