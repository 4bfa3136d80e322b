package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.Calibration;
import org.chordlog.web.http.Times;

/** A calibration of a bridge on a station. */
record CalibrationView(
    long id,
    String station,
    long bridgeId,
    double spanMm,
    double zeroOffsetMm,
    double footRadiusMm,
    @JsonPropertyDescription("mm²; order: span, zero offset, foot radius")
        List<List<Double>> covariance,
    @JsonPropertyDescription("null where it is not limited") double degreesOfFreedom,
    String takenAt,
    String dueAt,
    String takenBy,
    String summary) {
  static CalibrationView of(Calibration c) {
    return new CalibrationView(
        c.id(),
        c.station(),
        c.bridgeId(),
        c.spanMm(),
        c.zeroOffsetMm(),
        c.footRadiusMm(),
        c.covariance(),
        c.degreesOfFreedom(),
        Times.iso(c.takenAtMicros()),
        Times.iso(c.dueAtMicros()),
        c.takenBy(),
        c.summary());
  }
}
