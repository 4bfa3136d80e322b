package org.chordlog.capture;

import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * What a station file may say about capture; null takes the default, which follows the indicator's
 * resolution and permissible error and the rate at which samples arrive.
 *
 * @param mode default SETTLED
 * @param bandMm at rest within this (highest less lowest); default 4 steps
 * @param restSeconds at rest for this long; default 0.4
 * @param leastSamples and over this many samples; default 5, or 3 where they take four times as
 *     long
 * @param contactMm this far from free air is a contact; default 20 steps, at least 0.05 mm
 * @param freeAirMm what the indicator shows in free air; default: learned
 * @param timeoutSeconds report a contact that has not come to rest within this time; default 15
 * @param stuckSeconds report a value that has not changed by one step on a piece for this long;
 *     default 120
 * @param leastIntervalSeconds a second trigger within this is refused; default 0.5
 * @param everyFrame trigger: each value is a reading (an indicator that sends only on its button)
 * @param extreme default HIGHEST
 */
public record CaptureOptions(
    @Nullable CaptureMode mode,
    @Nullable Double bandMm,
    @Nullable Double restSeconds,
    @Nullable Integer leastSamples,
    @Nullable Double contactMm,
    @Nullable Double freeAirMm,
    @Nullable Double timeoutSeconds,
    @Nullable Double stuckSeconds,
    @Nullable Double leastIntervalSeconds,
    @Nullable Boolean everyFrame,
    @Nullable Extreme extreme) {
  private static final double BAND_STEPS = 4;
  private static final double CONTACT_STEPS = 20;
  private static final double LEAST_CONTACT_MM = 0.05;
  private static final int LEAST_SAMPLES = 5;
  private static final int LEAST_WHEN_SLOW = 3;

  /** All defaults. */
  public static CaptureOptions of(CaptureMode mode) {
    return new CaptureOptionsBuilder(mode).build();
  }

  /** With every default filled in for that indicator, which counts up. */
  public CaptureSettings settings(Indicator indicator) {
    return settings(indicator, Direction.COUNTS_UP);
  }

  /** With every default filled in for that indicator. */
  public CaptureSettings settings(Indicator indicator, Direction direction) {
    double stepMm = indicator.resolutionMm();
    return new CaptureSettings(
        or(mode, CaptureMode.SETTLED),
        or(extreme, Extreme.HIGHEST),
        or(everyFrame, false),
        new CaptureSettings.Plunger(
            Length.nm(stepMm),
            Length.nm(indicator.permissibleErrorMm()),
            Length.nm(indicator.travelMm()),
            Length.nm(or(contactMm, Math.max(CONTACT_STEPS * stepMm, LEAST_CONTACT_MM))),
            freeAirMm == null ? null : direction.inwardNm(Length.nm(freeAirMm))),
        new CaptureSettings.Rest(
            Length.nm(or(bandMm, BAND_STEPS * stepMm)),
            or(restSeconds, 0.4),
            or(leastSamples, LEAST_SAMPLES),
            or(leastSamples, LEAST_WHEN_SLOW)),
        new CaptureSettings.Patience(
            or(timeoutSeconds, 15.0), or(stuckSeconds, 120.0), or(leastIntervalSeconds, 0.5)));
  }

  private static <T> T or(@Nullable T given, T otherwise) {
    return given == null ? otherwise : given;
  }
}
