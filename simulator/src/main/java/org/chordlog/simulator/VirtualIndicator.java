package org.chordlog.simulator;

import java.util.Random;

/** Shows the plunger's place: quantised, with noise, counted from where it was last zeroed. */
final class VirtualIndicator {
  private static final double MINUTE = 60;

  private final Scenario.Gauge gauge;
  private final Random random;
  private final long stepNm;
  private boolean stuck;
  private long lastSteps;
  private double driftMmPerMinute;
  private double driftedMm;
  private double driftSinceSeconds;

  VirtualIndicator(Scenario.Gauge gauge, long seed) {
    this.gauge = gauge;
    random = new Random(seed);
    stepNm = Math.round(gauge.resolutionMm() * 1e6);
  }

  void stuck(boolean now) {
    stuck = now;
  }

  /** From that second on the zero wanders at this rate. */
  void drift(double mmPerMinute, double seconds) {
    driftedMm = driftMm(seconds);
    driftSinceSeconds = seconds;
    driftMmPerMinute = mmPerMinute;
  }

  private double driftMm(double seconds) {
    return driftedMm + driftMmPerMinute * (seconds - driftSinceSeconds) / MINUTE;
  }

  /** What it shows, in steps of its resolution. */
  long steps(double pushedInMm, double seconds) {
    if (!stuck) {
      double shown = pushedInMm - gauge.protrusionMm() + gauge.showsOnFlatMm() + driftMm(seconds);
      double noise = gauge.noiseSteps() * random.nextGaussian();
      lastSteps = Math.round(shown / gauge.resolutionMm() + noise);
    }
    return lastSteps;
  }

  long shownNm(double pushedInMm, double seconds) {
    return steps(pushedInMm, seconds) * stepNm;
  }
}
