package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Recorded;

/** A calibration; infinite degrees of freedom are the text "Infinity". */
record CalibrationJson(
    @JsonProperty("id") long id,
    @JsonProperty("station") String station,
    @JsonProperty("bridgeId") long bridgeId,
    @JsonProperty("spanMm") double spanMm,
    @JsonProperty("zeroOffsetMm") double zeroOffsetMm,
    @JsonProperty("footRadiusMm") double footRadiusMm,
    @JsonProperty("covariance") List<List<Double>> covariance,
    @JsonProperty("degreesOfFreedom") double degreesOfFreedom,
    @JsonProperty("takenAtMicros") long takenAtMicros,
    @JsonProperty("dueAtMicros") long dueAtMicros,
    @JsonProperty("takenBy") String takenBy,
    @JsonProperty("summary") String summary) {
  static CalibrationJson of(Calibration calibration) {
    return new CalibrationJson(
        calibration.id(),
        calibration.station(),
        calibration.bridgeId(),
        calibration.spanMm(),
        calibration.zeroOffsetMm(),
        calibration.footRadiusMm(),
        calibration.covariance(),
        calibration.degreesOfFreedom(),
        calibration.takenAtMicros(),
        calibration.dueAtMicros(),
        calibration.takenBy(),
        calibration.summary());
  }

  Calibration calibration() {
    return new Calibration(
        id,
        station,
        bridgeId,
        new Calibration.Fitted(spanMm, zeroOffsetMm, footRadiusMm, covariance, degreesOfFreedom),
        new Recorded(takenAtMicros, takenBy),
        dueAtMicros,
        summary);
  }
}
