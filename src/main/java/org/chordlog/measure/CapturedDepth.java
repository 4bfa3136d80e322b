package org.chordlog.measure;

/**
 * A depth taken from samples: the indicator's value (before the zero), the standard deviation of
 * the samples it is the mean of, their count, which they were, and when.
 */
public record CapturedDepth(
    CaptureMode mode,
    long valueNm,
    long scatterNm,
    int sampleCount,
    SampleRange samples,
    Moment moment) {
  /** Sequence numbers of the first and the last sample, both included. */
  public record SampleRange(long first, long last) {}

  /** One moment on the monotonic clock and on the wall clock. */
  public record Moment(long monotonicNanos, long wallMicros) {}

  public CapturedDepth {
    Check.within("scatterNm", scatterNm, 0, Long.MAX_VALUE);
    Check.within("sampleCount", sampleCount, 1, Integer.MAX_VALUE);
  }

  public long firstSequence() {
    return samples.first();
  }

  public long lastSequence() {
    return samples.last();
  }

  public long monotonicNanos() {
    return moment.monotonicNanos();
  }

  public long wallMicros() {
    return moment.wallMicros();
  }
}
