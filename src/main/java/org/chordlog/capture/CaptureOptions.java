package org.chordlog.capture;

import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.jspecify.annotations.Nullable;

/**
 * What a station file may say about capture; null takes the default, which follows the indicator's
 * resolution and the rate at which samples arrive.
 *
 * @param bandMm at rest within this (highest less lowest); default 4 steps
 * @param restSeconds at rest for this long; default 0.4
 * @param leastSamples and over this many samples; default 5
 * @param contactMm this far from free air is a contact; default 20 steps, at least 0.05 mm
 * @param freeAirMm what the indicator shows in free air; default: learned
 * @param freeAirEnd default LOW
 * @param timeoutSeconds in contact for this long without a rest is said; default 15
 * @param stuckSeconds not one step of change on a piece for this long is said; default 120
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
    @Nullable FreeAirEnd freeAirEnd,
    @Nullable Double timeoutSeconds,
    @Nullable Double stuckSeconds,
    @Nullable Double leastIntervalSeconds,
    @Nullable Boolean everyFrame,
    @Nullable Extreme extreme) {
  private static final double BAND_STEPS = 4;
  private static final double CONTACT_STEPS = 20;
  private static final double LEAST_CONTACT_MM = 0.05;
  private static final double NANOS = 1e9;

  /** All defaults. */
  public static CaptureOptions of(CaptureMode mode) {
    return new CaptureOptions(
        mode, null, null, null, null, null, null, null, null, null, null, null);
  }

  /** With every default filled in for that indicator. */
  public CaptureSettings settings(Indicator indicator) {
    double step = indicator.resolutionMm();
    return new CaptureSettings(
        or(mode, CaptureMode.SETTLED),
        Length.nm(step),
        Length.nm(or(bandMm, BAND_STEPS * step)),
        nanos(or(restSeconds, 0.4)),
        or(leastSamples, 5),
        Length.nm(or(contactMm, Math.max(CONTACT_STEPS * step, LEAST_CONTACT_MM))),
        freeAirMm == null ? null : Length.nm(freeAirMm),
        or(freeAirEnd, FreeAirEnd.LOW),
        Length.nm(indicator.travelMm()),
        nanos(or(timeoutSeconds, 15.0)),
        nanos(or(stuckSeconds, 120.0)),
        nanos(or(leastIntervalSeconds, 0.5)),
        or(everyFrame, false),
        or(extreme, Extreme.HIGHEST));
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * NANOS);
  }

  private static <T> T or(@Nullable T given, T otherwise) {
    return given == null ? otherwise : given;
  }
}
