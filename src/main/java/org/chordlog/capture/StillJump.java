package org.chordlog.capture;

import org.chordlog.measure.Sample;

/**
 * Tells five still samples, a jump from one sample to the next, and five still samples: no plunger
 * moves so. Only at fifteen samples a second or more, where a movement would show in between.
 */
final class StillJump {
  private static final int STILL = 5;
  private static final long MOST_PERIOD_NANOS = 67_000_000L;
  private final long stillNm;
  private final long leastNm;
  private final LongRing values = new LongRing();
  private final LongRing times = new LongRing();
  private long fromNm;
  private long toNm;

  StillJump(CaptureSettings settings) {
    stillNm = settings.bandNm();
    leastNm = Math.max(2 * settings.bandNm(), settings.plunger().permissibleErrorNm());
  }

  void clear() {
    values.clear();
    times.clear();
  }

  /** True when this sample completes such a jump. */
  boolean offer(Sample sample) {
    if (!times.isEmpty() && sample.monotonicNanos() - times.last() > MOST_PERIOD_NANOS) {
      clear();
    }
    values.addLast(sample.valueNm());
    times.addLast(sample.monotonicNanos());
    if (values.size() > 2 * STILL) {
      values.removeFirst();
      times.removeFirst();
    }
    return values.size() == 2 * STILL && jumps();
  }

  private boolean jumps() {
    if (Math.abs(values.get(STILL) - values.get(STILL - 1)) < leastNm) {
      return false;
    }
    fromNm = mean(0);
    toNm = mean(STILL);
    return spread(0) <= stillNm && spread(STILL) <= stillNm && Math.abs(toNm - fromNm) >= leastNm;
  }

  private long mean(int from) {
    long sum = 0;
    for (int i = from; i < from + STILL; i++) {
      sum += values.get(i) - values.get(from);
    }
    return values.get(from) + Math.round((double) sum / STILL);
  }

  private long spread(int from) {
    long low = Long.MAX_VALUE;
    long high = Long.MIN_VALUE;
    for (int i = from; i < from + STILL; i++) {
      low = Math.min(low, values.get(i));
      high = Math.max(high, values.get(i));
    }
    return high - low;
  }

  long fromNm() {
    return fromNm;
  }

  long toNm() {
    return toNm;
  }
}
