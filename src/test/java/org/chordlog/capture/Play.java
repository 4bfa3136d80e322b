package org.chordlog.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.chordlog.measure.Sample;

/**
 * A hand with a bridge, played as samples in invented time: free air at -3 mm, a smooth approach, a
 * landing that rings by 50 µm at 9 Hz (decay time 80 ms), a rest or rocking, a smooth lift. All
 * figures are invented.
 */
final class Play {
  static final double AIR_MM = -3;
  private final double rateHz;
  private final double stepMm;
  private final Random random;
  private final List<Sample> samples = new ArrayList<>();
  private double noiseMm = 0.0005;
  private double spikeShare;
  private double wrongDigitShare;
  private double vibrationMm;
  private double seconds;
  private double positionMm = AIR_MM;

  /** What the indicator shows for a true position. */
  DoubleUnaryOperator shown = mm -> mm;

  Play(double rateHz, double stepMm, long seed) {
    this.rateHz = rateHz;
    this.stepMm = stepMm;
    random = new Random(seed);
  }

  Play spikes(double share) {
    spikeShare = share;
    return this;
  }

  Play wrongDigits(double share) {
    wrongDigitShare = share;
    return this;
  }

  Play vibration(double mm) {
    vibrationMm = mm;
    return this;
  }

  Play noise(double mm) {
    noiseMm = mm;
    return this;
  }

  double seconds() {
    return seconds;
  }

  List<Sample> samples() {
    return samples;
  }

  Random random() {
    return random;
  }

  Play hold(double forSeconds) {
    double at = positionMm;
    return follow(t -> at, forSeconds);
  }

  /** A smooth way there (minimum jerk). */
  Play move(double toMm, double forSeconds) {
    double from = positionMm;
    follow(
        t -> {
          double x = Math.min(1, t / forSeconds);
          return from + (toMm - from) * x * x * x * (10 - 15 * x + 6 * x * x);
        },
        forSeconds);
    positionMm = toMm;
    return this;
  }

  /** Rings after a landing while it follows that movement. */
  Play land(DoubleUnaryOperator movement, double forSeconds) {
    return follow(
        t -> movement.applyAsDouble(t) + 0.05 * Math.exp(-t / 0.08) * Math.cos(2 * Math.PI * 9 * t),
        forSeconds);
  }

  Play touch(double mm, double restSeconds) {
    move(mm, 0.4).land(t -> mm, restSeconds);
    return leave(0.3);
  }

  Play leave(double liftSeconds) {
    return move(AIR_MM, liftSeconds).hold(0.9);
  }

  /** Rocked from a height where the extreme is not yet, past it several times. */
  Play rock(double extremeMm, double amplitudeMm, double hertz, double forSeconds, double lift) {
    double phase = random.nextDouble() * Math.PI;
    DoubleUnaryOperator rocking =
        t -> extremeMm + amplitudeMm * Math.pow(Math.sin(Math.PI * hertz * t + phase), 2);
    move(rocking.applyAsDouble(0), 0.4).land(rocking, forSeconds);
    positionMm = rocking.applyAsDouble(forSeconds);
    return leave(lift);
  }

  Play follow(DoubleUnaryOperator positionOf, double forSeconds) {
    double start = seconds;
    while (seconds < start + forSeconds) {
      positionMm = positionOf.applyAsDouble(seconds - start);
      add(positionMm);
      seconds += 1 / rateHz * (1 + 0.1 * (random.nextDouble() - 0.5));
    }
    return this;
  }

  private void add(double mm) {
    double noisy = mm + (noiseMm + vibrationMm) * random.nextGaussian();
    long steps = Math.round(shown.applyAsDouble(noisy) / stepMm);
    if (random.nextDouble() < wrongDigitShare) {
      steps = wrongDigit(steps);
    }
    if (random.nextDouble() < spikeShare) {
      steps += Math.round((random.nextBoolean() ? 0.5 : -0.5) / stepMm);
    }
    long nanos = Math.round(seconds * 1e9);
    long nm = steps * Math.round(stepMm * 1e6);
    samples.add(new Sample(samples.size() + 1L, nanos, nanos / 1000, nm, 0, false));
  }

  /** One of its four digits is another one. */
  private long wrongDigit(long steps) {
    long place = (long) Math.pow(10, random.nextInt(4));
    long digit = Math.abs(steps) / place % 10;
    long other = (digit + 1 + random.nextInt(9)) % 10;
    return steps + Long.signum(steps) * (other - digit) * place;
  }

  List<CaptureOutcome> through(Capture capture) {
    List<CaptureOutcome> outcomes = new ArrayList<>();
    samples.forEach(sample -> capture.offer(sample, outcomes::add));
    return outcomes;
  }
}
