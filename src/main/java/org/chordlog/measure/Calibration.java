package org.chordlog.measure;

import java.util.List;

/**
 * A dated record that replaces the nominal span (and, where the masters could tell them apart, the
 * zero offset and the foot radius) of a bridge on a station.
 */
public record Calibration(
    long id,
    String station,
    long bridgeId,
    Fitted fitted,
    Recorded taken,
    long dueAtMicros,
    String summary) {
  /**
   * The parameters fitted. {@code covariance} is 3×3 in mm², in the order span, zero offset, foot
   * radius; a parameter that was not fitted has zeros.
   */
  public record Fitted(
      double spanMm,
      double zeroOffsetMm,
      double footRadiusMm,
      List<List<Double>> covariance,
      double degreesOfFreedom) {
    public Fitted {
      Check.positive("spanMm", spanMm);
      Check.finite("zeroOffsetMm", zeroOffsetMm);
      Check.notNegative("footRadiusMm", footRadiusMm);
      covariance = covariance.stream().map(List::copyOf).toList();
      if (covariance.size() != 3 || covariance.stream().anyMatch(row -> row.size() != 3)) {
        throw new BadInput("covariance", covariance, "has the wrong shape", "3 rows of 3");
      }
    }
  }

  public Calibration {
    Check.text("station", station);
    if (dueAtMicros <= taken.atMicros()) {
      throw new BadInput("dueAtMicros", dueAtMicros, "is not after takenAtMicros", "a later time");
    }
  }

  public double spanMm() {
    return fitted.spanMm();
  }

  public double zeroOffsetMm() {
    return fitted.zeroOffsetMm();
  }

  public double footRadiusMm() {
    return fitted.footRadiusMm();
  }

  public List<List<Double>> covariance() {
    return fitted.covariance();
  }

  public double degreesOfFreedom() {
    return fitted.degreesOfFreedom();
  }

  public long takenAtMicros() {
    return taken.atMicros();
  }

  public String takenBy() {
    return taken.by();
  }
}
