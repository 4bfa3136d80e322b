package org.chordlog.profile;

/**
 * Fits the shape of an edge to what the bridge showed around it, by a grid of rises and shifts with
 * the level free. Of all rises that fit nearly as well as the best the longest is taken, so that
 * the evaluated length errs towards too short and never holds straight material.
 */
final class EdgeFit {
  private static final double MOST_RISE_MM = 300;
  private static final double RISE_STEP_MM = 20;
  private static final double USUAL_RISE_MM = 100;
  private static final double REACH_MM = 260;
  private static final double WIDE_REACH_MM = 560;

  private final Curve curve;
  private final double halfSpanMm;
  private final boolean rising;
  private final double aboutMm;

  private EdgeFit(Curve near, double halfSpanMm, boolean rising, double aboutMm) {
    this.halfSpanMm = halfSpanMm;
    this.rising = rising;
    this.aboutMm = aboutMm;
    curve = near;
  }

  /** An edge whose half level was seen at that place. */
  static Edge seen(Curve curve, double halfSpanMm, boolean rising, double halfLevelMm) {
    EdgeFit fit = near(curve, halfSpanMm, rising, halfLevelMm, REACH_MM);
    return fit.best(-40, 8, 11, true);
  }

  /** An edge before all that was seen, of which only the rest of the rise shows. */
  static Edge hidden(Curve curve, double halfSpanMm, boolean rising, double endMm) {
    EdgeFit fit = near(curve, halfSpanMm, rising, endMm, WIDE_REACH_MM);
    double from = -halfSpanMm - 150;
    return fit.best(from, 10, (int) ((40 - from) / 10) + 1, false);
  }

  private static EdgeFit near(
      Curve curve, double halfSpanMm, boolean rising, double aboutMm, double reachMm) {
    double reach = halfSpanMm + reachMm;
    Curve near = curve.between(aboutMm - reach, aboutMm + reach);
    return new EdgeFit(near, halfSpanMm, rising, aboutMm);
  }

  private Edge best(double firstShift, double shiftStep, int shifts, boolean seen) {
    if (curve.size() < 4) {
      return new Edge(aboutMm, USUAL_RISE_MM, seen);
    }
    int rises = (int) (MOST_RISE_MM / RISE_STEP_MM) + 1;
    double[] misfit = new double[rises];
    double[] shift = new double[rises];
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < rises; i++) {
      misfit[i] = Double.POSITIVE_INFINITY;
      for (int j = 0; j < shifts; j++) {
        double tried = firstShift + j * shiftStep;
        double q = misfit(i * RISE_STEP_MM, tried);
        if (q < misfit[i]) {
          misfit[i] = q;
          shift[i] = tried;
        }
      }
      least = Math.min(least, misfit[i]);
    }
    int longest = rises - 1;
    while (misfit[longest] > least * (1 + 8.0 / curve.size())) {
      longest--;
    }
    double way = rising ? shift[longest] : -shift[longest];
    return new Edge(aboutMm + way, longest * RISE_STEP_MM, seen);
  }

  /** Sum of the squares left by the best level for that rise and shift. */
  private double misfit(double riseMm, double shiftMm) {
    double shapes = 0;
    double products = 0;
    double squares = 0;
    for (int i = 0; i < curve.size(); i++) {
      double way = curve.placeMm[i] - aboutMm;
      double shape = EdgeShape.share((rising ? way : -way) - shiftMm, halfSpanMm, riseMm);
      double bend = curve.bendPerMm[i];
      shapes += shape * shape;
      products += shape * bend;
      squares += bend * bend;
    }
    return shapes == 0 ? squares : Math.max(0, squares - products * products / shapes);
  }
}
