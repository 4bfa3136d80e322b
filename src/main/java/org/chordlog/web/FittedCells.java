package org.chordlog.web;

import static org.chordlog.web.CalibrationColumns.COVARIANCES;
import static org.chordlog.web.CalibrationColumns.DEGREES;
import static org.chordlog.web.CalibrationColumns.FOOT;
import static org.chordlog.web.CalibrationColumns.SPAN;
import static org.chordlog.web.CalibrationColumns.UNCERTAINTIES;
import static org.chordlog.web.CalibrationColumns.ZERO;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration.Fitted;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/** What a row of calibrations states as fitted: span, zero and feet with their uncertainties. */
final class FittedCells {
  /** A span further from that of the bridge is a slip of the pen or another bridge. */
  private static final double FAR = 0.05;

  private FittedCells() {}

  /** What a certificate does not state was not fitted: as the bridge is stated, without scatter. */
  static Fitted read(TableFile.Row row, Bridge bridge) {
    double span = row.neededLength(SPAN);
    if (!(Math.abs(span / bridge.spanMm() - 1) <= FAR)) {
      String allowed = "within 5 % of the bridge's " + Numbers.plain(bridge.spanMm()) + " mm";
      throw new BadInput(SPAN, Numbers.plain(span), "is far from the bridge's span", allowed);
    }
    Double zero = row.length(ZERO);
    Double foot = row.length(FOOT);
    Double degrees = row.number(DEGREES, "a number above 0, or empty where not limited");
    return new Fitted(
        span,
        zero == null ? 0 : zero,
        Check.notNegative(FOOT, foot == null ? bridge.footRadiusMm() : foot),
        covariance(row),
        degrees == null ? Double.POSITIVE_INFINITY : Check.positive(DEGREES, degrees));
  }

  private static List<List<Double>> covariance(TableFile.Row row) {
    double[] u = new double[3];
    String unused = row.needed(UNCERTAINTIES.get(0), "the standard uncertainty of the span, mm");
    for (int i = 0; i < 3; i++) {
      u[i] = Check.notNegative(UNCERTAINTIES.get(i), or0(row.length(UNCERTAINTIES.get(i))));
    }
    double[] c = new double[3];
    for (int i = 0; i < 3; i++) {
      c[i] = or0(row.number(COVARIANCES.get(i), "a covariance in mm²"));
      double most = i == 0 ? u[0] * u[1] : i == 1 ? u[0] * u[2] : u[1] * u[2];
      if (Math.abs(c[i]) > most * (1 + 1e-9)) {
        String allowed = "at most the product of the two uncertainties, " + most;
        throw new BadInput(COVARIANCES.get(i), c[i], "is too large", allowed);
      }
    }
    return List.of(
        List.of(u[0] * u[0], c[0], c[1]),
        List.of(c[0], u[1] * u[1], c[2]),
        List.of(c[1], c[2], u[2] * u[2]));
  }

  private static double or0(@Nullable Double value) {
    return value == null ? 0 : value;
  }
}
