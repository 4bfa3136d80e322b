package org.chordlog.verdict;

import org.jspecify.annotations.Nullable;

/**
 * The standard deviation of a gauge with its operators and places as a study of it found, mm at the
 * nominal radius of the job that is judged, with its 95 % interval; an end that is null is open.
 */
public record StudiedGauge(
    String study, double sigmaMm, @Nullable Double lowerMm, @Nullable Double upperMm) {
  /** Told at another nominal radius: a standard deviation of curvature times its square. */
  public StudiedGauge at(double fromMm, double toMm) {
    double times = toMm * toMm / (fromMm * fromMm);
    return new StudiedGauge(
        study,
        sigmaMm * times,
        lowerMm == null ? null : (Double) (lowerMm * times),
        upperMm == null ? null : (Double) (upperMm * times));
  }
}
