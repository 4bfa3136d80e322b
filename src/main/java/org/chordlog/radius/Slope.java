package org.chordlog.radius;

/**
 * Signed curvature κ = 2h/D, D = a² + h² − 2hr, and its derivatives by depth h, span 2a and foot
 * radius r; in radius they are the familiar (1 − a²/h²)/2, a/|h| by the half span, and ∓1.
 */
record Slope(double curvaturePerMm, double byDepth, double bySpan, double byFoot) {
  static Slope at(double depthMm, double spanMm, double footRadiusMm) {
    double half = spanMm / 2;
    double d = Chord.denominator(depthMm, half, footRadiusMm);
    double square = d * d;
    return new Slope(
        2 * depthMm / d,
        2 * (half - depthMm) * (half + depthMm) / square,
        -2 * depthMm * half / square,
        4 * depthMm * depthMm / square);
  }
}
