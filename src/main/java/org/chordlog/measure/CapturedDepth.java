package org.chordlog.measure;

/**
 * A depth taken from samples {@code firstSequence} to {@code lastSequence}: the indicator's value
 * (before the zero), the standard deviation of the samples it is the mean of, and their count.
 */
public record CapturedDepth(
    CaptureMode mode,
    long valueNm,
    long scatterNm,
    int sampleCount,
    long firstSequence,
    long lastSequence,
    long monotonicNanos,
    long wallMicros) {
  public CapturedDepth {
    Check.within("scatterNm", scatterNm, 0, Long.MAX_VALUE);
    Check.within("sampleCount", sampleCount, 1, Integer.MAX_VALUE);
  }
}
