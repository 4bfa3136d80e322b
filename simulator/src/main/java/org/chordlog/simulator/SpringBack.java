package org.chordlog.simulator;

import org.chordlog.measure.Check;

/**
 * Elastic unloading of a thin round tube of elastic, perfectly plastic material: the curvature
 * falls by M/(EI) when the rollers let go (plastic bending theory; moment of the thin tube M/My =
 * (2/π)(θ/sin θ + cos θ), sin θ = κy/κ, κy = Y/(E·r) at the mean radius of the wall).
 */
record SpringBack(double youngMpa, double wallMeanRadiusMm) {
  SpringBack {
    Check.positive("youngMpa", youngMpa);
    Check.positive("wallMeanRadiusMm", wallMeanRadiusMm);
  }

  /** Curvature of the centreline after unloading, 1/mm; 0 where it never yielded. */
  double unloadedPerMm(double loadedPerMm, double yieldMpa) {
    double yieldCurvature = yieldMpa / (youngMpa * wallMeanRadiusMm);
    if (loadedPerMm <= yieldCurvature) {
      return 0;
    }
    return loadedPerMm - yieldCurvature * momentRatio(yieldCurvature / loadedPerMm);
  }

  /** M/My at κy/κ = {@code elasticShare}, at most 1. */
  static double momentRatio(double elasticShare) {
    double theta = Math.asin(elasticShare);
    return 2 / Math.PI * (theta / elasticShare + Math.cos(theta));
  }
}
