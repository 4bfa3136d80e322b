package org.chordlog.monitor;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Reading;
import org.chordlog.radius.Placing;
import org.chordlog.radius.RadiusModel;
import org.chordlog.stats.control.Observation;
import org.chordlog.store.Readings;
import org.jspecify.annotations.Nullable;

/** Readings as the statistics see them: the radius on the specified face. */
final class Observations {
  private static final Placing NOTHING = new Placing(0, 0);
  private final Readings readings;
  private final Map<Long, Optional<RadiusModel>> models = new HashMap<>();

  Observations(Readings readings) {
    this.readings = readings;
  }

  /** Null for a flat, which has no radius. */
  @Nullable Observation of(Reading reading) {
    Double radius = reading.radius().radiusMm();
    if (radius == null) {
      return null;
    }
    Placing placing = placing(reading);
    return new Observation(
        reading.id(),
        reading.piece(),
        reading.position(),
        reading.wallMicros(),
        radius,
        placing.standardUncertaintyMm(),
        placing.biasMm());
  }

  /** What is new at each reading, as a standard uncertainty of curvature, 1/mm. */
  double repeatabilityPerMm(Reading reading) {
    Observation seen = of(reading);
    return seen == null
        ? reading.radius().standardUncertaintyPerMm()
        : seen.standardUncertainty() / (seen.value() * seen.value());
  }

  /** What is new each time the bridge is placed; nothing where the set-up is not known. */
  private Placing placing(Reading reading) {
    @Nullable RadiusModel model =
        models.computeIfAbsent(reading.setUpId(), this::model).orElse(null);
    CapturedDepth captured = reading.captured();
    return model == null
        ? NOTHING
        : model.placing(reading.depthNm(), captured.scatterNm(), captured.sampleCount());
  }

  private Optional<RadiusModel> model(long setUpId) {
    return readings.setUp(setUpId).map(RadiusModel::of);
  }
}
