package org.chordlog.radius;

import org.chordlog.measure.Check;
import org.chordlog.measure.Decision;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/**
 * Decision with a guard band {@code guardFactor}·U on both sides of each limit, compared in
 * curvature, where the uncertainty is symmetric around the interval's centre (ISO 14253-1; JCGM
 * 106, 8.3). A flat may be any bend up to the least that could be told.
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
    double least = e.flat() ? 0 : e.centrePerMm() - guard;
    double most = e.flat() ? 1 / e.lowerMm() : e.centrePerMm() + guard;
    double tightest = lowerMm == null ? Double.POSITIVE_INFINITY : 1 / lowerMm;
    double slackest = upperMm == null ? Double.NEGATIVE_INFINITY : 1 / upperMm;
    if (most <= tightest && least >= slackest) {
      return Decision.CONFORMS;
    }
    return least > tightest || most < slackest ? Decision.DOES_NOT_CONFORM : Decision.UNDECIDED;
  }
}
