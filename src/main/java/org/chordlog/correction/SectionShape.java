package org.chordlog.correction;

import org.chordlog.measure.Check;

/**
 * Elastic unloading of a bent section of elastic, perfectly plastic material (plastic beam theory):
 * κ_unloaded = κ_loaded − κ_y·m(s) with s = κ_y/κ_loaded ≤ 1 and κ_y the curvature at which the
 * outermost fibre yields.
 */
enum SectionShape {
  /** κ_y = 2Y/(E·height). */
  RECTANGLE {
    @Override
    double moment(double s) {
      return 1.5 * (1 - s * s / 3);
    }

    @Override
    double slope(double s) {
      return -s;
    }
  },
  /** κ_y = Y/(E·r) at the mean radius r of the wall. */
  THIN_TUBE {
    @Override
    double moment(double s) {
      return 2 / Math.PI * (Math.asin(s) / s + Math.sqrt(1 - s * s));
    }

    @Override
    double slope(double s) {
      return 2 / Math.PI * (Math.sqrt(1 - s * s) / s - Math.asin(s) / (s * s));
    }
  },
  /** κ_y = Y/(E·r) at the radius r. */
  SOLID_ROUND {
    @Override
    double moment(double s) {
      double root = Math.sqrt(1 - s * s);
      return 2 / (3 * Math.PI) * ((5 - 2 * s * s) * root + 3 * Math.asin(s) / s);
    }

    @Override
    double slope(double s) {
      double root = Math.sqrt(1 - s * s);
      double arc = Math.asin(s);
      double first = -4 * s * root - (5 - 2 * s * s) * s / root;
      return 2 / (3 * Math.PI) * (first + 3 * (1 / (s * root) - arc / (s * s)));
    }
  };

  /** M/M_y at s; s in (0, 1]. */
  abstract double moment(double s);

  /** Its derivative; s in (0, 1). */
  abstract double slope(double s);

  /**
   * Curvature at first yield, 1/mm, for yield strength and Young's modulus, MPa, and the distance
   * of the outermost fibre from the neutral axis, mm (half the height of a rectangle).
   */
  static double yieldPerMm(double yieldMpa, double youngMpa, double fibreMm) {
    return Check.positive("yieldMpa", yieldMpa)
        / (Check.positive("youngMpa", youngMpa) * Check.positive("fibreMm", fibreMm));
  }
}
