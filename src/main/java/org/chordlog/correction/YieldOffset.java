package org.chordlog.correction;

import org.chordlog.correction.Told.Lot.Offset;
import org.chordlog.measure.Check;

/**
 * What the yield strengths of two lots' certificates say of the step between them: a lot is an
 * offset in curvature, Δκ = ∂κ_u/∂κ_y·ΔY/(E·c).
 */
final class YieldOffset {
  private YieldOffset() {}

  /**
   * Springback of the present lot at its target; {@code yieldMpa} of the present and the next lot,
   * each with standard uncertainty {@code uncertaintyMpa}; {@code targetMm} radius after unloading.
   */
  static Offset between(
      Springback present,
      double targetMm,
      double yieldMpa,
      double nextYieldMpa,
      double uncertaintyMpa) {
    double loaded = present.loadedPerMm(1 / Check.positive("targetMm", targetMm));
    double perMpa =
        present.ofYield(loaded) * present.yieldPerMm() / Check.positive("yieldMpa", yieldMpa);
    double u = Math.sqrt(2) * Check.notNegative("uncertaintyMpa", uncertaintyMpa);
    return new Offset(
        perMpa * (Check.positive("nextYieldMpa", nextYieldMpa) - yieldMpa), Math.abs(perMpa) * u);
  }
}
