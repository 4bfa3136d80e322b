package org.chordlog.radius;

import org.apache.commons.math3.special.Erf;
import org.chordlog.measure.Check;
import org.chordlog.measure.Decision;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/**
 * Decision with a guard band {@code guardFactor}·U on both sides of each limit, compared in
 * curvature, where the uncertainty is symmetric around the interval's centre (ISO 14253-1; JCGM
 * 106, 8.3). A flat is treated as any curvature up to the detection limit.
 */
public record Conformity(double guardFactor) {
  private static final double NEGLIGIBLE = 8;
  private static final double ROUNDING = 1e-9;

  /**
   * ISO 14253-1:2017: at most 5 % probability of a wrong verdict, 1.645 u, printed as 0.83 U. With
   * two limits the probabilities beyond them add up (JCGM 106, 8.3.3), so that for a tolerance
   * below about 4 u the guard bands are wider.
   */
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
    if (most <= tightest && least >= slackest && bothWithin(e, tightest, slackest)) {
      return Decision.CONFORMS;
    }
    return least > tightest || most < slackest ? Decision.DOES_NOT_CONFORM : Decision.UNDECIDED;
  }

  /** Whether the probabilities beyond the two limits together are as small as one may be alone. */
  private boolean bothWithin(RadiusEstimate e, double tightest, double slackest) {
    double unit = e.coverageFactor() * e.standardUncertaintyPerMm() / 2;
    if (e.flat() || !(unit > 0) || guardFactor == 0) {
      return true;
    }
    double tight = (tightest - e.centrePerMm()) / unit;
    double slack = (e.centrePerMm() - slackest) / unit;
    return beyond(tight) + beyond(slack) <= beyond(2 * guardFactor) * (1 + ROUNDING);
  }

  /** Upper tail of the standard normal distribution. */
  private static double beyond(double z) {
    return z > NEGLIGIBLE ? 0 : Erf.erfc(z / Math.sqrt(2)) / 2;
  }
}
