package org.chordlog.simulator;

import java.util.Random;

/**
 * A resonance shaken by white noise, at even steps of time: an autoregression of second order with
 * the poles of the damped oscillation, scaled to its standard deviation.
 */
final class LineVibration {
  private static final double LEAST_RATE_FACTOR = 5;
  private static final int SETTLING = 500;

  private final Random random;
  private final int steps;
  private final double first;
  private final double second;
  private final double fresh;
  private double now;
  private double before;

  LineVibration(LineScenario.Vibration of, double valuesPerSecond, Random random) {
    this.random = random;
    steps = (int) Math.max(1, Math.ceil(LEAST_RATE_FACTOR * of.hz() / valuesPerSecond));
    double w = 2 * Math.PI * of.hz() / (valuesPerSecond * steps);
    double radius = Math.exp(-of.damping() * w);
    first = 2 * radius * Math.cos(w * Math.sqrt(1 - of.damping() * of.damping()));
    second = -radius * radius;
    double variance = (1 - second) / ((1 + second) * ((1 - second) * (1 - second) - first * first));
    fresh = of.um() / 1000 / Math.sqrt(variance);
    for (int i = 0; i < SETTLING / steps + 1; i++) {
      nextMm();
    }
  }

  /** The depth that it adds to the next value, mm. */
  double nextMm() {
    for (int i = 0; i < steps; i++) {
      double next = first * now + second * before + fresh * random.nextGaussian();
      before = now;
      now = next;
    }
    return now;
  }
}
