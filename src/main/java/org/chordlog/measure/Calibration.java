package org.chordlog.measure;

import java.util.List;

/**
 * A dated record that replaces the nominal span (and, where the masters could tell them apart, the
 * zero offset and the foot radius) of a bridge on a station. {@code covariance} is 3×3 in mm², in
 * the order span, zero offset, foot radius; a parameter that was not fitted has zeros.
 */
public record Calibration(
    long id,
    String station,
    long bridgeId,
    double spanMm,
    double zeroOffsetMm,
    double footRadiusMm,
    List<List<Double>> covariance,
    double degreesOfFreedom,
    long takenAtMicros,
    long dueAtMicros,
    String takenBy,
    String summary) {
  public Calibration {
    Check.text("station", station);
    Check.positive("spanMm", spanMm);
    Check.finite("zeroOffsetMm", zeroOffsetMm);
    Check.notNegative("footRadiusMm", footRadiusMm);
    covariance = covariance.stream().map(List::copyOf).toList();
    if (covariance.size() != 3 || covariance.stream().anyMatch(row -> row.size() != 3)) {
      throw new BadInput("covariance", covariance, "has the wrong shape", "3 rows of 3");
    }
    if (dueAtMicros <= takenAtMicros) {
      throw new BadInput("dueAtMicros", dueAtMicros, "is not after takenAtMicros", "a later time");
    }
  }
}
