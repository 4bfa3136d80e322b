package org.chordlog.correction;

import org.chordlog.measure.Check;

/**
 * A section under bending with linear hardening, h = tangent modulus over Young's modulus: κ_u = (1
 * − h)·κ_u of the perfectly plastic section, for any shape, since σ = (1 − h)σ_pp + hEε. Curvatures
 * in 1/mm.
 */
record Springback(SectionShape shape, double yieldPerMm, double hardening) {
  Springback {
    Check.positive("yieldPerMm", yieldPerMm);
    Check.within("hardening", hardening, 0, 1);
  }

  /** Curvature left when the rollers let go; 0 where the section never yields. */
  double unloadedPerMm(double loadedPerMm) {
    return yields(loadedPerMm)
        ? (1 - hardening) * (loadedPerMm - yieldPerMm * shape.moment(yieldPerMm / loadedPerMm))
        : 0;
  }

  /** ∂κ_u/∂κ_l. */
  double gain(double loadedPerMm) {
    double s = yieldPerMm / loadedPerMm;
    return yields(loadedPerMm) ? (1 - hardening) * (1 + s * s * shape.slope(s)) : 0;
  }

  /** ∂κ_u/∂κ_y. */
  double ofYield(double loadedPerMm) {
    double s = yieldPerMm / loadedPerMm;
    return yields(loadedPerMm) ? -(1 - hardening) * (shape.moment(s) + s * shape.slope(s)) : 0;
  }

  private boolean yields(double loadedPerMm) {
    return loadedPerMm > yieldPerMm;
  }

  /** The loaded curvature that leaves an unloaded one, by bisection. */
  double loadedPerMm(double unloadedPerMm) {
    double wanted = Check.positive("unloadedPerMm", unloadedPerMm);
    double low = yieldPerMm;
    double high = yieldPerMm + wanted;
    while (unloadedPerMm(high) < wanted) {
      high *= 2;
    }
    for (int i = 0; i < 100; i++) {
      double middle = (low + high) / 2;
      boolean open = unloadedPerMm(middle) < wanted;
      low = open ? middle : low;
      high = open ? high : middle;
    }
    return high;
  }
}
