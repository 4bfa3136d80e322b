package org.chordlog.capture;

import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sample;

/**
 * The newest samples that may be one rest: a sliding window of a least time and a least count that
 * is cut at the old end as soon as its spread goes beyond what noise could make. All sums are exact
 * and updated with each sample at constant cost.
 */
final class RestWindow {
  /** Fewest samples for which noise can be distinguished from movement. */
  private static final int LEAST_FOR_NOISE = 5;

  private static final int MOST_SAMPLES = 1 << 16;

  /** Scatter that rounding makes of any value between two steps. */
  private static final double QUANTISING_STEPS = 0.35;

  private final CaptureSettings settings;
  private final RestTolerance tolerance;
  private final LongRing times = new LongRing();
  private final LongRing values = new LongRing();
  private final LongRing sequences = new LongRing();
  private final LongRing lows = new LongRing();
  private final LongRing highs = new LongRing();
  private final long restNanos;
  private final long widestNm;
  private long toleratedErrorNm;
  private long reference;
  private long sum;
  private long sumOfSquares;
  private long sumByPlace;
  private long sumOfSquaredSteps;

  RestWindow(CaptureSettings settings, RestTolerance tolerance) {
    this.settings = settings;
    this.tolerance = tolerance;
    restNanos = tolerance.restNanos(settings);
    long mostNoiseNm = tolerance.mostNoiseNm(settings, 0, Integer.MAX_VALUE);
    widestNm = Math.max(settings.bandNm(), 12 * mostNoiseNm);
  }

  void meanMayErrBy(long standardErrorNm) {
    toleratedErrorNm = standardErrorNm;
  }

  long meanMayErrNm() {
    return Math.max(toleratedErrorNm, settings.plunger().permissibleErrorNm());
  }

  boolean toleranceDecides() {
    return toleratedErrorNm > settings.plunger().permissibleErrorNm();
  }

  void add(Sample sample) {
    long value = sample.valueNm();
    while (!values.isEmpty() && spreadWith(value) > widestNm) {
      removeFirst();
    }
    append(sample, value);
    while (hasSpare()) {
      removeFirst();
    }
  }

  /** Whether a sample of that value would cut what is there. */
  boolean cutBy(long value) {
    return !values.isEmpty() && spreadWith(value) > widestNm;
  }

  private long spreadWith(long value) {
    return Math.max(highs.first(), value) - Math.min(lows.first(), value);
  }

  private void append(Sample sample, long value) {
    if (values.isEmpty()) {
      reference = value;
    } else {
      sumOfSquaredSteps += square(value - values.last());
    }
    long deviation = value - reference;
    sum += deviation;
    sumOfSquares += square(deviation);
    sumByPlace += values.size() * deviation;
    while (!lows.isEmpty() && lows.last() > value) {
      lows.removeLast();
    }
    lows.addLast(value);
    while (!highs.isEmpty() && highs.last() < value) {
      highs.removeLast();
    }
    highs.addLast(value);
    times.addLast(sample.monotonicNanos());
    values.addLast(value);
    sequences.addLast(sample.sequence());
  }

  private boolean hasSpare() {
    int n = values.size();
    return n > MOST_SAMPLES
        || (n > 2 && settings.longEnough(n - 1, times.last() - times.get(1), restNanos));
  }

  private void removeFirst() {
    if (values.size() == 1) {
      clear();
      return;
    }
    long value = values.first();
    long deviation = value - reference;
    sum -= deviation;
    sumOfSquares -= square(deviation);
    sumByPlace -= sum;
    sumOfSquaredSteps -= square(values.get(1) - value);
    if (lows.first() == value) {
      lows.removeFirst();
    }
    if (highs.first() == value) {
      highs.removeFirst();
    }
    times.removeFirst();
    values.removeFirst();
    sequences.removeFirst();
  }

  private static long square(long value) {
    return value * value;
  }

  void clear() {
    for (LongRing ring : new LongRing[] {times, values, sequences, lows, highs}) {
      ring.clear();
    }
    sum = 0;
    sumOfSquares = 0;
    sumByPlace = 0;
    sumOfSquaredSteps = 0;
  }

  int count() {
    return values.size();
  }

  /** The mean of the window as a depth taken at its last sample. */
  CapturedDepth captured(CaptureMode mode, Sample last) {
    return new CapturedDepth(
        mode,
        meanNm(),
        standardDeviationNm(),
        count(),
        new CapturedDepth.SampleRange(sequences.first(), last.sequence()),
        new CapturedDepth.Moment(last.monotonicNanos(), last.wallMicros()));
  }

  /** From the first to the last sample of the window. */
  long spanNanos() {
    return values.isEmpty() ? 0 : times.last() - times.first();
  }

  long spreadNm() {
    return values.isEmpty() ? 0 : highs.first() - lows.first();
  }

  /** Whether it is long enough, narrow enough, and going nowhere. */
  boolean atRest() {
    return longEnough() && still();
  }

  /** Whether nothing beyond noise and a creep cut it for the least time and count of samples. */
  boolean longEnough() {
    return count() >= MOST_SAMPLES || settings.longEnough(count(), spanNanos(), restNanos);
  }

  /** Whether it is long enough and going nowhere, but scatters too much for a rest. */
  boolean swings() {
    return longEnough() && !still() && Math.abs(driftNm()) <= mostDriftNm();
  }

  /** As {@link #atRest()}, but for the quarter of the time, as the air between two pieces. */
  boolean atRestBriefly() {
    return count() >= 2 && spanNanos() >= restNanos / 4 && still();
  }

  /**
   * As {@link #atRest()}, but with twice the tolerance, because an operator asserts it is still.
   */
  boolean atRestOnRequest() {
    return longEnough() && still(2);
  }

  /** Whether it is narrow enough and going nowhere, however short. */
  boolean still() {
    return still(1);
  }

  private boolean still(double factor) {
    int n = count();
    if (n < 2) {
      return false;
    }
    return spreadNm() <= factor * mostSpread(n, shownNoiseNm())
        && Math.abs(driftNm()) <= factor * mostDriftNm();
  }

  /** How far from its first to its last sample a rest may seem to go by noise alone. */
  double mostDriftNm() {
    return settings.resolutionNm() / 2.0 + 2 * shownNoiseNm() * Math.sqrt(12.0 / count());
  }

  private double shownNoiseNm() {
    return Math.max(noiseNm(), QUANTISING_STEPS * settings.resolutionNm());
  }

  /** The band, or what white noise of that size makes of so many samples. */
  private double mostSpread(int n, double noise) {
    boolean mayBeNoise =
        n >= LEAST_FOR_NOISE && noise <= tolerance.mostNoiseNm(settings, toleratedErrorNm, n);
    double ofNoise = noise * (2 * Math.sqrt(2 * Math.log(n)) + 1);
    double band = (double) settings.bandNm();
    return mayBeNoise ? Math.max(band, ofNoise) : band;
  }

  /** Standard deviation of one sample from its neighbours alone, which a slow drift leaves be. */
  double noiseNm() {
    int n = count();
    return n < 2 ? 0 : Math.sqrt(sumOfSquaredSteps / (2.0 * (n - 1)));
  }

  /** Change from the first to the last sample along the line of least squares. */
  private double driftNm() {
    double n = count();
    return 12 * (sumByPlace - (n - 1) / 2 * sum) / (n * (n + 1));
  }

  long meanNm() {
    return reference + Math.round((double) sum / count());
  }

  long standardDeviationNm() {
    double n = count();
    double about = sumOfSquares - (double) sum * sum / n;
    return n < 2 ? 0 : Math.round(Math.sqrt(Math.max(0, about) / (n - 1)));
  }
}
