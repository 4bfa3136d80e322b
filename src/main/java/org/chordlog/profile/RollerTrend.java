package org.chordlog.profile;

import java.util.List;

/**
 * How one roller's ripple develops from piece to piece: moving average of the evidence of it with
 * its limit, of its amplitude (percent of curvature) with its standard uncertainty, and for how
 * many pieces it has been beyond the limit.
 */
public record RollerTrend(
    String roller,
    long pieces,
    double evidence,
    double limit,
    double amplitudePercent,
    double uncertaintyPercent,
    long beyondFor,
    List<Double> newest) {
  public RollerTrend {
    newest = List.copyOf(newest);
  }

  public boolean beyond() {
    return beyondFor > 0;
  }
}
