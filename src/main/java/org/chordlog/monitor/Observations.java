package org.chordlog.monitor;

import java.util.HashMap;
import java.util.Map;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Length;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.stats.control.Observation;
import org.chordlog.store.Readings;
import org.jspecify.annotations.Nullable;

/** Readings as the statistics see them: the radius on the specified face. */
final class Observations {
  private final Readings readings;
  private final Map<Long, Double> resolutions = new HashMap<>();

  Observations(Readings readings) {
    this.readings = readings;
  }

  /** Null for a flat, which has no radius. */
  @Nullable Observation of(Reading reading) {
    Double radius = reading.radius().radiusMm();
    if (radius == null) {
      return null;
    }
    return new Observation(
        reading.id(),
        reading.piece(),
        reading.position(),
        reading.wallMicros(),
        radius,
        Math.abs(slope(radius, reading.depthNm())) * depthUncertaintyMm(reading));
  }

  /** What is new at each reading, as a standard uncertainty of curvature, 1/mm. */
  double repeatabilityPerMm(Reading reading) {
    Observation seen = of(reading);
    return seen == null
        ? reading.radius().standardUncertaintyPerMm()
        : seen.standardUncertainty() / (seen.value() * seen.value());
  }

  /** ∂R/∂h = 1 − ρ/|h| with ρ ≈ R: (1 − a²/h²)/2 rewritten by a² = 2ρ|h| − h². */
  private static double slope(double radius, long depthNm) {
    return depthNm == 0 ? 0 : 1 - radius / Math.abs(Length.mm(depthNm));
  }

  /** Scatter of the mean and resolution (rectangular): what changes from reading to reading. */
  private double depthUncertaintyMm(Reading reading) {
    CapturedDepth captured = reading.captured();
    double scatter = Length.mm(captured.scatterNm()) / Math.sqrt(captured.sampleCount());
    double step = resolutions.computeIfAbsent(reading.setUpId(), this::resolution);
    return Math.sqrt(scatter * scatter + step * step / 12);
  }

  private double resolution(long setUpId) {
    return readings.setUp(setUpId).map(SetUp::indicator).map(i -> i.resolutionMm()).orElse(0.0);
  }
}
