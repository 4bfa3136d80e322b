package org.chordlog.profile;

/**
 * What the bridge shows of a step of curvature: it sees the curvature averaged with a triangle
 * whose base is the span, since the depth at s is ∫κ times that triangle to first order; so a step
 * that rises evenly over a length is a triangle folded with a box.
 */
final class EdgeShape {
  private EdgeShape() {}

  /** Share of the step shown with the plunger that far beyond the middle of the rise, 0 to 1. */
  static double share(double beyondMm, double halfSpanMm, double riseMm) {
    if (riseMm < 1e-3) {
      return below(beyondMm, halfSpanMm);
    }
    double half = riseMm / 2;
    return (integral(beyondMm + half, halfSpanMm) - integral(beyondMm - half, halfSpanMm)) / riseMm;
  }

  /** Distribution function of the triangle. */
  private static double below(double x, double a) {
    if (x <= -a || x >= a) {
      return x < 0 ? 0 : 1;
    }
    double rest = a - Math.abs(x);
    double tail = rest * rest / (2 * a * a);
    return x <= 0 ? tail : 1 - tail;
  }

  /** Its integral. */
  private static double integral(double x, double a) {
    if (x <= -a || x >= a) {
      return Math.max(0, x);
    }
    double rest = a - Math.abs(x);
    double tail = rest * rest * rest / (6 * a * a);
    return x <= 0 ? tail : x + tail;
  }
}
