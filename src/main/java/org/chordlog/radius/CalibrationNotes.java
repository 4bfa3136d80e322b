package org.chordlog.radius;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a calibration could and could not tell, in plain words. */
final class CalibrationNotes {
  /** The masters teach something of the foot radius when they shrink its uncertainty to this. */
  private static final double SHARPER = 0.9;

  private CalibrationNotes() {}

  static List<String> of(MasterProblem.Outcome outcome, boolean fits) {
    List<String> notes = new ArrayList<>();
    notes.add(fit(outcome, fits));
    notes.add(zero(outcome));
    notes.add(foot(outcome));
    return notes;
  }

  private static String fit(MasterProblem.Outcome outcome, boolean fits) {
    if (outcome.fit().degreesOfFreedom() == 0) {
      return "No reading is left over to test the fit.";
    }
    return fits
        ? "The readings fit together within their uncertainties."
        : "Lack of fit: the readings differ by more than their uncertainties; look for a wrong master,"
            + " dirt under a foot, or an indicator out of its permissible error.";
  }

  private static String zero(MasterProblem.Outcome outcome) {
    if (outcome.zeroFitted()) {
      double u = Math.sqrt(outcome.covariance().getEntry(1, 1));
      return format("Zero offset %.4f mm, standard uncertainty %.4f mm.", outcome.zeroOffset(), u);
    }
    return outcome.masters() < 2
        ? "One master can't tell a zero offset from the span: it is kept at 0."
        : "The masters' curvatures are too alike to tell a zero offset from the span: it is kept at"
            + " 0.";
  }

  private static String foot(MasterProblem.Outcome outcome) {
    double nominal = outcome.bridge().footRadiusMm();
    if (!outcome.footFitted()) {
      return format("Foot radius kept at %.4f mm: no uncertainty is stated for it.", nominal);
    }
    double before = outcome.bridge().footRadiusUncertaintyMm();
    double after = Math.sqrt(outcome.covariance().getEntry(2, 2));
    return after < SHARPER * before
        ? format(
            "Foot radius %.4f mm, standard uncertainty %.4f mm (%.4f mm before).",
            outcome.footRadius(), after, before)
        : "The masters can't tell the foot radius better than stated: it stays as it is.";
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
