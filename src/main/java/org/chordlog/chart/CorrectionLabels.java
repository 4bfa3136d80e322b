package org.chordlog.chart;

import org.chordlog.correction.TrailPoint;
import org.chordlog.measure.Quantity;

/** What is said of the points of a picture of corrections. */
record CorrectionLabels(CorrectionTrail trail) {
  String of(CorrectionPlace each, ValueScale scale) {
    TrailPoint point = each.point();
    if (!each.piece()) {
      return point.kind() == TrailPoint.Kind.CORRECTION ? correction(point) : named(point);
    }
    return "Piece %d: %s %%, level %s ± %s %%"
        .formatted(
            point.where().piece(),
            Words.number(each.reading(), scale.decimals()),
            Words.number(each.level(), scale.decimals()),
            Words.number(2 * each.uncertainty(), scale.decimals()));
  }

  private String named(TrailPoint point) {
    return switch (point.kind()) {
      case LOT -> "New lot: " + point.where().lot();
      case SET_UP -> "Set-up";
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
    return "Correction: %s; advised before: %s"
        .formatted(what, advised == 0 ? "to leave it" : signed(advised) + " " + trail.unit());
  }

  static String shortly(TrailPoint point) {
    double done = point.move().done();
    return switch (point.kind()) {
      case CORRECTION -> Double.isNaN(done) ? "Correction" : signed(done);
      case LOT -> "Lot " + point.where().lot();
      case SET_UP -> "Set-up";
      case TARGET -> "Target";
      case SCALE -> "Scale";
      case PIECE -> "";
    };
  }

  private static String signed(double amount) {
    return (amount > 0 ? "+" : "") + Words.number(amount, Math.abs(amount) < 1 ? 3 : 2);
  }
}
