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

  /** Spread that is still rest, mm. */
  public CaptureOptionsBuilder bandMm(double value) {
    bandMm = value;
    return this;
  }

  /** Least time at rest. */
  public CaptureOptionsBuilder restSeconds(double value) {
    restSeconds = value;
    return this;
  }

  /** Fewest samples of a rest. */
  public CaptureOptionsBuilder leastSamples(int value) {
    leastSamples = value;
    return this;
  }

  /** How far above free air a contact begins, mm. */
  public CaptureOptionsBuilder contactMm(double value) {
    contactMm = value;
    return this;
  }

  /** What is shown in free air, mm. */
  public CaptureOptionsBuilder freeAirMm(double value) {
    freeAirMm = value;
    return this;
  }

  /** After which time without rest it is said that none comes. */
  public CaptureOptionsBuilder timeoutSeconds(double value) {
    timeoutSeconds = value;
    return this;
  }

  /** After which time without a change the value is said to be stuck. */
  public CaptureOptionsBuilder stuckSeconds(double value) {
    stuckSeconds = value;
    return this;
  }

  /** Least time between two readings. */
  public CaptureOptionsBuilder leastIntervalSeconds(double value) {
    leastIntervalSeconds = value;
    return this;
  }

  /** Whether every frame is a reading, for indicators that send only on their button. */
  public CaptureOptionsBuilder everyFrame(boolean value) {
    everyFrame = value;
    return this;
  }

  /** Which extreme is taken while the bridge is rocked. */
  public CaptureOptionsBuilder extreme(Extreme value) {
    extreme = value;
    return this;
  }

  /** What was set; the rest is left to the defaults. */
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
