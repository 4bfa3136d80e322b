package org.chordlog.simulator;

import org.chordlog.measure.Check;

/**
 * Pyramid rollers with the two outer ones {@code 2 × halfDistanceMm} apart: pressing the middle one
 * in by U bends to an inside radius (a² + U²)/(2U) − t − r (elementary geometry of the chord).
 */
record Rollers(double halfDistanceMm, double rollRadiusMm) {
  Rollers {
    Check.positive("halfDistanceMm", halfDistanceMm);
    Check.positive("rollRadiusMm", rollRadiusMm);
  }

  /** Radius of the centreline under load, mm, of a tube of that diameter. */
  double loadedRadiusMm(double settingMm, double diameterMm) {
    double chord =
        (halfDistanceMm * halfDistanceMm + settingMm * settingMm)
            / (2 * Check.positive("settingMm", settingMm));
    return chord - rollRadiusMm - diameterMm / 2;
  }
}
