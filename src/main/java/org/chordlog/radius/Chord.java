package org.chordlog.radius;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/**
 * The chord between two feet: depth to curvature and back, mm and 1/mm, both positive on a convex
 * face. The centres of the feet and the point under the plunger lie on a circle of signed radius ρ
 * with 1/ρ = 2h/(a² + h²), a half the span; the face has the radius ρ − foot radius on either side
 * (convex smaller, concave larger). Elementary geometry; Pythagorean triples are exact.
 */
public final class Chord {
  /** Rounding that a radius just at the bound may carry. */
  private static final double EDGE = 1e-14;

  private Chord() {}

  /** Signed curvature of the face, smooth through flat; |depth| at most half the span. */
  public static double curvaturePerMm(double depthMm, double spanMm, double footRadiusMm) {
    checkBridge(spanMm, footRadiusMm);
    double half = spanMm / 2;
    if (!(Math.abs(Check.finite("depthMm", depthMm)) <= half)) {
      throw new BadInput("depthMm", depthMm, "is beyond half the span", within(half));
    }
    return 2 * depthMm / denominator(depthMm, half, footRadiusMm);
  }

  /** Signed depth on a face of that signed curvature, free of cancellation. */
  public static double depthMm(double curvaturePerMm, double spanMm, double footRadiusMm) {
    checkBridge(spanMm, footRadiusMm);
    Check.finite("curvaturePerMm", curvaturePerMm);
    double half = spanMm / 2;
    double centres = curvaturePerMm / (1 + footRadiusMm * curvaturePerMm);
    double slope = half * centres;
    if (!(Math.abs(slope) <= 1 + EDGE) || 1 + footRadiusMm * curvaturePerMm <= 0) {
      throw tooTight(1 / curvaturePerMm, half, footRadiusMm);
    }
    return half * slope / (1 + Math.sqrt(Math.max(0, (1 - slope) * (1 + slope))));
  }

  static double denominator(double depthMm, double halfSpanMm, double footRadiusMm) {
    return halfSpanMm * halfSpanMm + depthMm * (depthMm - 2 * footRadiusMm);
  }

  static Sentence within(double limitMm) {
    return Sentence.of("± %s", Quantity.stated(limitMm));
  }

  private static void checkBridge(double spanMm, double footRadiusMm) {
    Check.positive("spanMm", spanMm);
    if (!(Check.notNegative("footRadiusMm", footRadiusMm) < spanMm / 2)) {
      throw new BadInput("footRadiusMm", footRadiusMm, "meets the other foot", "below span / 2");
    }
  }

  private static BadInput tooTight(double signedRadiusMm, double half, double footRadiusMm) {
    boolean convex = signedRadiusMm > 0;
    double least = convex ? half - footRadiusMm : half + footRadiusMm;
    String problem =
        convex ? "is too tight for both feet to stand on" : "is too tight for the feet to go into";
    return new BadInput(
        "radiusMm",
        Math.abs(signedRadiusMm),
        problem,
        Sentence.of("%s or more", Quantity.stated(least)));
  }
}
