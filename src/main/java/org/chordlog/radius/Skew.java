package org.chordlog.radius;

import java.math.BigDecimal;
import java.util.Locale;

/**
 * A bridge turned by φ out of the bend plane sees Euler's normal curvature κ₁cos²φ + κ₂sin²φ (L.
 * Euler 1760), κ₁ along the bend, κ₂ across the face, both signed, positive when convex.
 */
final class Skew {
  private Skew() {}

  /** Curvature seen under the angle, 1/mm. */
  static double normalCurvature(double alongPerMm, double acrossPerMm, double degrees) {
    double sine = StrictMath.sin(StrictMath.toRadians(degrees));
    return alongPerMm + (acrossPerMm - alongPerMm) * sine * sine;
  }

  /** What a bridge with points for feet, turned that far, would read, for the operator. */
  static String sentence(double alongPerMm, double acrossPerMm, double degrees) {
    return sentence(normalCurvature(alongPerMm, acrossPerMm, degrees) / alongPerMm, degrees);
  }

  /** The same from the share of the bend that is seen. */
  static String sentence(double share, double degrees) {
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
   * What a bridge set by eye within ± the limit does: true along = seen − (across − seen)·tan²φ,
   * Euler's formula solved for κ₁, with φ evenly spread (rectangular, GUM 4.3.7). Mean and standard
   * deviation of tan²φ.
   */
  record Spread(double mean, double deviation) {
    static Spread within(double limitDegrees) {
      double l = StrictMath.toRadians(limitDegrees);
      double l2 = l * l;
      return l < 0.1 ? series(l2) : closed(StrictMath.tan(l), l);
    }

    private static Spread closed(double tan, double l) {
      double second = tan / l - 1;
      double fourth = tan * tan * tan / (3 * l) - second;
      return new Spread(second, Math.sqrt(fourth - second * second));
    }

    private static Spread series(double l2) {
      double mean = l2 * (1 / 3.0 + l2 * (2 / 15.0 + l2 * 17 / 315));
      double variance = 4 / 45.0 + l2 * (32 / 315.0 + l2 * 376 / 4_725);
      return new Spread(mean, l2 * Math.sqrt(variance));
    }
  }
}
