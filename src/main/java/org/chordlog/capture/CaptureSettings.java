package org.chordlog.capture;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/** {@link CaptureOptions} with nothing left open, in nanometres and nanoseconds. */
public record CaptureSettings(
    CaptureMode mode,
    Extreme extreme,
    boolean everyFrame,
    Plunger plunger,
    Rest rest,
    Patience patience) {
  private static final double MOST_SECONDS = 3_600;

  /** So many times as long is a rest of fewer samples, where they come slowly. */
  private static final int SLOW = 4;

  /** The indicator's plunger; {@code freeAirNm} null: learned from the stream. */
  public record Plunger(
      long resolutionNm,
      long permissibleErrorNm,
      long travelNm,
      long contactNm,
      @Nullable Long freeAirNm) {
    public Plunger {
      Check.within("resolutionNm", resolutionNm, 1, Integer.MAX_VALUE);
    }
  }

  /**
   * At rest within the band (highest less lowest) for that time and over that many samples; where
   * samples come slowly, over {@code leastWhenSlow} of them in four times that time.
   */
  public record Rest(long bandNm, double seconds, int leastSamples, int leastWhenSlow) {
    public Rest {
      within("restSeconds", seconds, 0.001, MOST_SECONDS);
      Check.within("capture.leastSamples", leastSamples, 2, 10_000);
      Check.within("leastWhenSlow", leastWhenSlow, 2, leastSamples);
    }

    long nanos() {
      return CaptureSettings.nanos(seconds);
    }
  }

  /** How long is waited before something is said, and between two triggers. */
  public record Patience(double timeoutSeconds, double stuckSeconds, double leastIntervalSeconds) {
    public Patience {
      within("timeoutSeconds", timeoutSeconds, 0.001, MOST_SECONDS);
      within("stuckSeconds", stuckSeconds, 0.001, 24 * MOST_SECONDS);
      within("leastIntervalSeconds", leastIntervalSeconds, 0, MOST_SECONDS);
    }
  }

  public CaptureSettings {
    if (rest.bandNm() < plunger.resolutionNm()) {
      throw new BadInput(
          "capture.bandMm",
          rest.bandNm() / 1e6,
          "is below one step",
          "at least " + plunger.resolutionNm() / 1e6);
    }
    if (plunger.contactNm() <= rest.bandNm()) {
      throw new BadInput(
          "capture.contactMm",
          plunger.contactNm() / 1e6,
          "is within the band",
          "above " + rest.bandNm() / 1e6);
    }
    if (patience.timeoutSeconds() < rest.seconds() || patience.stuckSeconds() < rest.seconds()) {
      throw new BadInput(
          "capture.restSeconds",
          rest.seconds(),
          "is longer than capture.timeoutSeconds ("
              + patience.timeoutSeconds()
              + ") or capture.stuckSeconds ("
              + patience.stuckSeconds()
              + ")",
          "at most the shorter of the two");
    }
  }

  private static void within(String key, double seconds, double least, double most) {
    Check.within("capture." + key, seconds, least, most);
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }

  long resolutionNm() {
    return plunger.resolutionNm();
  }

  long bandNm() {
    return rest.bandNm();
  }

  long contactNm() {
    return plunger.contactNm();
  }

  public long restNanos() {
    return rest.nanos();
  }

  int leastSamples() {
    return rest.leastSamples();
  }

  /** Samples that a rest needs where they come at that interval. */
  int leastSamplesAt(double periodNanos) {
    double slow = Math.ceil(SLOW * restNanos() / Math.max(periodNanos, 1)) + 1;
    return (int) Math.max(rest.leastWhenSlow(), Math.min(slow, leastSamples()));
  }

  /** Whether so long a span holds so few samples only because they come slowly. */
  boolean isSlow(long spanNanos) {
    return spanNanos >= SLOW * restNanos();
  }

  /** Whether so many samples over that span are enough for a rest of that least time. */
  boolean longEnough(int samples, long spanNanos, long leastNanos) {
    boolean slow = spanNanos >= SLOW * leastNanos && samples >= rest.leastWhenSlow();
    return spanNanos >= leastNanos && (slow || samples >= leastSamples());
  }

  long timeoutNanos() {
    return nanos(patience.timeoutSeconds());
  }

  long stuckNanos() {
    return nanos(patience.stuckSeconds());
  }

  long leastIntervalNanos() {
    return nanos(patience.leastIntervalSeconds());
  }

  /** Scatter (standard deviation) that any indicator may show at rest. */
  long usualNoiseNm() {
    return 3 * resolutionNm();
  }

  /**
   * Scatter up to which a mean of so many samples is still good enough: its standard error is
   * within the indicator's permissible error, or within what a tolerance permits. Never so much
   * that it could be a contact.
   */
  long mostNoiseNm(int samples, long toleratedErrorNm) {
    long standardError = Math.max(plunger.permissibleErrorNm(), toleratedErrorNm);
    double goodEnough = standardError * Math.sqrt(samples);
    return Math.max(usualNoiseNm(), Math.min(contactNm() / 4, Math.round(goodEnough)));
  }
}
