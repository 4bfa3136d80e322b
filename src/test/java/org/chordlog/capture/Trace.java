package org.chordlog.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.chordlog.measure.Sample;

/** A synthetic stream of samples: quantised, with noise and jitter, in invented time. */
final class Trace {
  private final double stepMm;
  private final double rateHz;
  private final Random random;
  private final List<Sample> samples = new ArrayList<>();
  private double noiseSteps;
  private double jitter;
  private double seconds;
  private double lastMm;

  Trace(double stepMm, double rateHz, long seed) {
    this.stepMm = stepMm;
    this.rateHz = rateHz;
    this.random = new Random(seed);
  }

  Trace noise(double steps) {
    noiseSteps = steps;
    return this;
  }

  /** Each interval is off by up to this share of itself. */
  Trace jitter(double share) {
    jitter = share;
    return this;
  }

  Trace hold(double mm, double forSeconds) {
    return follow(t -> mm, forSeconds);
  }

  Trace ramp(double toMm, double forSeconds) {
    double from = lastMm;
    return follow(t -> from + (toMm - from) * t / forSeconds, forSeconds);
  }

  Trace swing(double midMm, double amplitudeMm, double periodSeconds, double forSeconds) {
    return follow(t -> midMm + amplitudeMm * Math.sin(2 * Math.PI * t / periodSeconds), forSeconds);
  }

  /** Nothing arrives for this long. */
  Trace silence(double forSeconds) {
    seconds += forSeconds;
    return this;
  }

  Trace follow(DoubleUnaryOperator depthMm, double forSeconds) {
    double end = seconds + forSeconds;
    double start = seconds;
    while (seconds < end) {
      lastMm = depthMm.applyAsDouble(seconds - start);
      add(lastMm);
      seconds += (1 + jitter * (2 * random.nextDouble() - 1)) / rateHz;
    }
    return this;
  }

  private void add(double mm) {
    long steps = Math.round(mm / stepMm + noiseSteps * random.nextGaussian());
    long nanos = Math.round(seconds * 1e9);
    long value = steps * Math.round(stepMm * 1e6);
    samples.add(new Sample(samples.size() + 1L, nanos, nanos / 1000, value, 0, false));
  }

  List<Sample> samples() {
    return samples;
  }

  List<CaptureOutcome> through(Capture capture) {
    List<CaptureOutcome> outcomes = new ArrayList<>();
    samples.forEach(sample -> capture.offer(sample, outcomes::add));
    return outcomes;
  }
}
