package org.chordlog.chart;

import org.chordlog.correction.TrailPoint;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Quantity;
import org.chordlog.verdict.Words;

/** What is said of the points of a picture of corrections. */
record CorrectionLabels(CorrectionTrail trail) {
  String of(CorrectionPlace each, ValueScale scale) {
    TrailPoint point = each.point();
    if (!each.piece()) {
      return point.kind() == TrailPoint.Kind.CORRECTION ? correction(point) : named(point);
    }
    return "Piece %s: %s %%, level %s ± %s %%"
        .formatted(
            point.where().piece(),
            ChartWords.number(each.reading(), scale.decimals()),
            ChartWords.number(each.level(), scale.decimals()),
            ChartWords.number(2 * each.uncertainty(), scale.decimals()));
  }

  private String named(TrailPoint point) {
    return switch (point.kind()) {
      case LOT -> Words.label(JobEvent.Kind.MATERIAL_LOT) + ": " + point.where().lot();
      case SET_UP -> Words.label(JobEvent.Kind.SET_UP);
      case TARGET ->
          "Another target: " + trail.lengths().text(Quantity.stated(point.where().targetMm()));
      case SCALE -> "The scale was described anew";
      case CORRECTION, PIECE -> "";
    };
  }

  private String correction(TrailPoint point) {
    double advised = point.move().advised();
    double done = point.move().done();
    String what = Double.isNaN(done) ? "amount not recorded" : signed(done) + " " + trail.unit();
    return "%s: %s; advised before: %s"
        .formatted(
            Words.label(JobEvent.Kind.CORRECTION),
            what,
            advised == 0 ? "to leave it" : signed(advised) + " " + trail.unit());
  }

  static String shortly(TrailPoint point) {
    double done = point.move().done();
    return switch (point.kind()) {
      case CORRECTION -> Double.isNaN(done) ? Words.label(JobEvent.Kind.CORRECTION) : signed(done);
      case LOT -> "Lot " + point.where().lot();
      case SET_UP -> Words.label(JobEvent.Kind.SET_UP);
      case TARGET -> "Target";
      case SCALE -> "Scale";
      case PIECE -> "";
    };
  }

  private static String signed(double amount) {
    return (amount > 0 ? "+" : "") + ChartWords.number(amount, Math.abs(amount) < 1 ? 3 : 2);
  }
}
