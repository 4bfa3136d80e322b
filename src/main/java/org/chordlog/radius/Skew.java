package org.chordlog.radius;

import java.math.BigDecimal;
import java.util.Locale;

/**
 * A bridge turned by φ out of the bend plane sees Euler's normal curvature κ₁cos²φ + κ₂sin²φ (L.
 * Euler 1760), κ₁ along the bend, κ₂ across the face, both signed, positive when convex.
 */
public final class Skew {
  private Skew() {}

  /** Curvature seen under the angle, 1/mm. */
  public static double normalCurvature(double alongPerMm, double acrossPerMm, double degrees) {
    double sine = StrictMath.sin(StrictMath.toRadians(degrees));
    return alongPerMm + (acrossPerMm - alongPerMm) * sine * sine;
  }

  /** What a bridge turned that far would read on such a face, for the operator. */
  public static String sentence(double alongPerMm, double acrossPerMm, double degrees) {
    double share = normalCurvature(alongPerMm, acrossPerMm, degrees) / alongPerMm;
    String turned = String.format(Locale.ROOT, "Turned %s° out of the bend plane ", plain(degrees));
    if (!(share > 0.05)) {
      return turned + "the bridge would show this bend as flat or as bent the other way.";
    }
    double percent = 100 * (1 / share - 1);
    String side = percent < 0 ? "tight" : "slack";
    String size = String.format(Locale.ROOT, "%.2g", Math.abs(percent));
    return turned + "the bridge would read about " + size + " % too " + side + ".";
  }

  private static String plain(double degrees) {
    return BigDecimal.valueOf(degrees).stripTrailingZeros().toPlainString();
  }

  /**
   * Root mean square of sin²φ for φ evenly spread over ± the limit. The bias goes one way and is
   * not corrected (the angle is unknown and aimed at 0), so it counts in full (GUM F.2.4.5).
   */
  static double rmsSineSquared(double limitDegrees) {
    double l = StrictMath.toRadians(limitDegrees);
    double l2 = l * l;
    double meanFourth =
        l < 0.1
            ? l2 * l2 * (1 / 5.0 - l2 * (2 / 21.0 - l2 / 45))
            : 3 / 8.0 - StrictMath.sin(2 * l) / (4 * l) + StrictMath.sin(4 * l) / (32 * l);
    return Math.sqrt(meanFourth);
  }
}
