package org.chordlog.radius;

import org.chordlog.measure.Check;
import org.chordlog.measure.Decision;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/**
 * Decision with a guard band {@code guardFactor}·U on both sides of each limit, compared in
 * curvature, where the uncertainty is symmetric (ISO 14253-1; JCGM 106, 8.3).
 */
public record Conformity(double guardFactor) {
  /** ISO 14253-1:2017: at most 5 % probability of a wrong verdict, 1.645 u, printed as 0.83 U. */
  public static final Conformity ISO_14253_1 = new Conformity(1.6448536269514722 / 2);

  /** The guard band is the whole U: at most 2.3 % (ILAC-G8:2009). */
  public static final Conformity WHOLE_UNCERTAINTY = new Conformity(1);

  public Conformity {
    Check.within("guardFactor", guardFactor, 0, 3);
  }

  /** Decides on the face that the estimate is for; limits in mm on the same face. */
  public Decision decide(RadiusEstimate estimate, Specification specification) {
    return decide(estimate, specification.lowerLimitMm(), specification.upperLimitMm());
  }

  Decision decide(RadiusEstimate e, @Nullable Double lowerMm, @Nullable Double upperMm) {
    if (lowerMm == null && upperMm == null) {
      return Decision.NO_LIMITS;
    }
    double guard = guardFactor * e.coverageFactor() * e.standardUncertaintyPerMm();
    double curvature = bend(e);
    double below = lowerMm == null ? Double.POSITIVE_INFINITY : 1 / lowerMm - curvature;
    double above = upperMm == null ? Double.POSITIVE_INFINITY : curvature - 1 / upperMm;
    double inside = Math.min(below, above);
    if (inside >= guard) {
      return Decision.CONFORMS;
    }
    return inside < -guard ? Decision.DOES_NOT_CONFORM : Decision.UNDECIDED;
  }

  /** Curvature in the sense of the bend; a flat keeps no sign of its own. */
  private static double bend(RadiusEstimate e) {
    return e.flat() ? 0 : Math.abs(e.curvaturePerMm());
  }
}
