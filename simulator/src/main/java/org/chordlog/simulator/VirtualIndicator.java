package org.chordlog.simulator;

import java.util.Random;

/** Shows the plunger's place: quantised, with noise, counted from where it was last zeroed. */
final class VirtualIndicator {
  private final Scenario.Gauge gauge;
  private final Random random;

  VirtualIndicator(Scenario.Gauge gauge, long seed) {
    this.gauge = gauge;
    random = new Random(seed);
  }

  /** What it shows, in steps of its resolution. */
  long steps(double pushedInMm) {
    double shown = pushedInMm - gauge.protrusionMm() + gauge.showsOnFlatMm();
    return Math.round(shown / gauge.resolutionMm() + gauge.noiseSteps() * random.nextGaussian());
  }
}
