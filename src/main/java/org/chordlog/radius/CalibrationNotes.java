package org.chordlog.radius;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/** What a calibration could and could not tell, in plain words. */
final class CalibrationNotes {
  /** The masters teach something of the foot radius when they shrink its uncertainty to this. */
  private static final double SHARPER = 0.9;

  private CalibrationNotes() {}

  static List<Sentence> of(MasterProblem.Outcome outcome, boolean fits) {
    List<Sentence> notes = new ArrayList<>();
    notes.add(fit(outcome, fits));
    notes.add(zero(outcome));
    notes.add(foot(outcome));
    return notes;
  }

  private static Sentence fit(MasterProblem.Outcome outcome, boolean fits) {
    if (outcome.fit().degreesOfFreedom() == 0) {
      return Sentence.plain("No reading is left over to test the fit.");
    }
    return Sentence.plain(
        fits
            ? "The readings fit together within their uncertainties."
            : "Lack of fit: the readings differ by more than their uncertainties; look for a wrong"
                + " master, dirt under a foot, or an indicator out of its permissible error.");
  }

  private static Sentence zero(MasterProblem.Outcome outcome) {
    if (outcome.zeroFitted()) {
      double u = Math.sqrt(outcome.covariance().getEntry(1, 1));
      return Sentence.of(
          "Zero offset %s, standard uncertainty %s.",
          Quantity.of(outcome.zeroOffset(), u), Quantity.uncertainty(u));
    }
    return Sentence.plain(
        outcome.masters() < 2
            ? "One master can't tell a zero offset from the span: the offset is taken as 0."
            : "The masters' curvatures are too alike to tell a zero offset from the span: the offset"
                + " is taken as 0.");
  }

  private static Sentence foot(MasterProblem.Outcome outcome) {
    double nominal = outcome.bridge().footRadiusMm();
    if (!outcome.footFitted()) {
      return Sentence.of(
          "Foot radius as stated, %s: no uncertainty is stated for it.", Quantity.stated(nominal));
    }
    double before = outcome.bridge().footRadiusUncertaintyMm();
    double after = Math.sqrt(outcome.covariance().getEntry(2, 2));
    return after < SHARPER * before
        ? Sentence.of(
            "Foot radius %s, standard uncertainty %s (%s before).",
            Quantity.of(outcome.footRadius(), after),
            Quantity.uncertainty(after),
            Quantity.stated(before))
        : Sentence.plain("The masters can't tell the foot radius better than stated.");
  }
}
