package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.correction.TrailPoint;

/** A point of the trail with its place along the picture; events are between pieces. */
record CorrectionPlace(double along, TrailPoint point) {
  /** Permil to percent. */
  private static final double PERCENT = 0.1;

  /** A gain known worse than that, relative, would be all band. */
  private static final double WORST_GAIN = 0.75;

  boolean piece() {
    return point.kind() == TrailPoint.Kind.PIECE;
  }

  double level() {
    return PERCENT * point.level().estimate();
  }

  double reading() {
    return PERCENT * point.level().reading();
  }

  double uncertainty() {
    return PERCENT * point.level().standardUncertainty();
  }

  /** Change of curvature for one unit, percent of the target's. */
  double gain() {
    return 100 * point.gain().perMmPerUnit() * point.where().targetMm();
  }

  double gainUncertainty() {
    return 100 * point.gain().standardUncertainty() * point.where().targetMm();
  }

  boolean gainKnown() {
    return gainUncertainty() < WORST_GAIN * Math.abs(gain());
  }

  double deadband() {
    return PERCENT * point.level().deadband();
  }

  /** The points in their places: pieces counted from 1, what happened between them. */
  static List<CorrectionPlace> of(List<TrailPoint> points) {
    List<CorrectionPlace> places = new ArrayList<>();
    int pieces = 0;
    for (TrailPoint each : points) {
      boolean piece = each.kind() == TrailPoint.Kind.PIECE;
      pieces += piece ? 1 : 0;
      places.add(new CorrectionPlace(piece ? pieces : pieces + 0.5, each));
    }
    return places;
  }
}
