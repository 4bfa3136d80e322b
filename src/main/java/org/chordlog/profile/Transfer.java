package org.chordlog.profile;

/**
 * What a bridge shows of a curvature that changes as a wave: sinc²(a/L) with half the span a and
 * wavelength L, the Fourier transform of the triangle that it averages with. Never negative,
 * nothing at L = a, a/2, a/3 …
 */
final class Transfer {
  private Transfer() {}

  /** 0 to 1. */
  static double share(double halfSpanMm, double wavelengthMm) {
    double sinc = sinc(halfSpanMm / wavelengthMm);
    return sinc * sinc;
  }

  /** sin(πx)/(πx): what a mean over x wavelengths leaves of a wave. */
  static double sinc(double x) {
    double angle = Math.PI * x;
    return Math.abs(angle) < 1e-9 ? 1 : StrictMath.sin(angle) / angle;
  }
}
