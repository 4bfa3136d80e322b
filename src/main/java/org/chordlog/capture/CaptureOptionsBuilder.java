package org.chordlog.capture;

import org.chordlog.measure.CaptureMode;
import org.jspecify.annotations.Nullable;

/** Builds {@link CaptureOptions}; what is not set takes its default. */
public final class CaptureOptionsBuilder {
  private final CaptureMode mode;
  private @Nullable Double bandMm;
  private @Nullable Double restSeconds;
  private @Nullable Integer leastSamples;
  private @Nullable Double contactMm;
  private @Nullable Double freeAirMm;
  private @Nullable Double timeoutSeconds;
  private @Nullable Double stuckSeconds;
  private @Nullable Double leastIntervalSeconds;
  private @Nullable Boolean everyFrame;
  private @Nullable Extreme extreme;

  public CaptureOptionsBuilder(CaptureMode mode) {
    this.mode = mode;
  }

  public CaptureOptionsBuilder bandMm(double value) {
    bandMm = value;
    return this;
  }

  public CaptureOptionsBuilder restSeconds(double value) {
    restSeconds = value;
    return this;
  }

  public CaptureOptionsBuilder leastSamples(int value) {
    leastSamples = value;
    return this;
  }

  public CaptureOptionsBuilder contactMm(double value) {
    contactMm = value;
    return this;
  }

  public CaptureOptionsBuilder freeAirMm(double value) {
    freeAirMm = value;
    return this;
  }

  public CaptureOptionsBuilder timeoutSeconds(double value) {
    timeoutSeconds = value;
    return this;
  }

  public CaptureOptionsBuilder stuckSeconds(double value) {
    stuckSeconds = value;
    return this;
  }

  public CaptureOptionsBuilder leastIntervalSeconds(double value) {
    leastIntervalSeconds = value;
    return this;
  }

  public CaptureOptionsBuilder everyFrame(boolean value) {
    everyFrame = value;
    return this;
  }

  public CaptureOptionsBuilder extreme(Extreme value) {
    extreme = value;
    return this;
  }

  public CaptureOptions build() {
    return new CaptureOptions(
        mode,
        bandMm,
        restSeconds,
        leastSamples,
        contactMm,
        freeAirMm,
        timeoutSeconds,
        stuckSeconds,
        leastIntervalSeconds,
        everyFrame,
        extreme);
  }
}
