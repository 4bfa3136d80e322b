package org.chordlog.capture;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/** {@link CaptureOptions} with nothing left open, in nanometres and nanoseconds. */
public record CaptureSettings(
    CaptureMode mode,
    long resolutionNm,
    long bandNm,
    long restNanos,
    int leastSamples,
    long contactNm,
    @Nullable Long freeAirNm,
    FreeAirEnd freeAirEnd,
    long travelNm,
    long timeoutNanos,
    long stuckNanos,
    long leastIntervalNanos,
    boolean everyFrame,
    Extreme extreme) {
  private static final long HOUR = 3_600_000_000_000L;

  public CaptureSettings {
    Check.within("resolutionNm", resolutionNm, 1, Integer.MAX_VALUE);
    if (bandNm < resolutionNm) {
      throw new BadInput(
          "capture.bandMm", bandNm / 1e6, "is below one step", "at least " + resolutionNm / 1e6);
    }
    if (contactNm <= bandNm) {
      throw new BadInput(
          "capture.contactMm", contactNm / 1e6, "is within the band", "above " + bandNm / 1e6);
    }
    Check.within("capture.restSeconds (ns)", restNanos, 1, HOUR);
    Check.within("capture.leastSamples", leastSamples, 2, 10_000);
    Check.within("capture.timeoutSeconds (ns)", timeoutNanos, restNanos, HOUR);
    Check.within("capture.stuckSeconds (ns)", stuckNanos, restNanos, 24 * HOUR);
    Check.within("capture.leastIntervalSeconds (ns)", leastIntervalNanos, 0, HOUR);
  }

  /** Scatter (standard deviation) up to which a spread beyond the band may still be noise. */
  long noiseLimitNm() {
    return 3 * resolutionNm;
  }
}
