package org.chordlog.radius;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/**
 * What fitting masters does to the uncertainty of a radius, why it may rise, and which master would
 * lower it. Figures are standard uncertainties of one reading on a face of {@code radiusMm}, mm: by
 * the bridge's stated span and foot, by the fit, by the fit with the zero held at 0 (null where the
 * fit holds it anyway). Skew and the reading's own scatter, which no master changes, are left out.
 */
public record CalibrationAdvice(
    double radiusMm,
    double statedMm,
    double fittedMm,
    @Nullable Double zeroHeldMm,
    @Nullable Addition best,
    List<String> sentences) {
  /** A larger rise than this share is explained. */
  private static final double RISE = 1.02;

  /** A master is offered where it lowers the uncertainty to this share. */
  private static final double WORTH = 0.95;

  /** One more master and the standard uncertainty that the fit would have with it, mm. */
  public record Addition(Face face, double masterRadiusMm, double fittedMm) {}

  public CalibrationAdvice {
    sentences = List.copyOf(sentences);
  }

  /** For a radius on the face that the bridge stands on. */
  public static CalibrationAdvice of(
      Bridge bridge,
      Indicator indicator,
      @Nullable Zero zero,
      List<MasterReading> readings,
      Face face,
      double radiusMm) {
    Check.positive("radiusMm", radiusMm);
    MasterPlan plan = new MasterPlan(bridge, indicator, zero, face, radiusMm);
    MasterPlan.Fitted fitted = plan.fitted(readings);
    Double held = fitted.zeroFitted() ? (Double) plan.zeroHeldMm(readings) : null;
    Addition best = plan.best(readings);
    double stated = plan.statedMm();
    boolean worth = best != null && best.fittedMm() < WORTH * fitted.uncertaintyMm();
    List<String> sentences = new ArrayList<>();
    sentences.add(compared(radiusMm, stated, fitted.uncertaintyMm()));
    if (fitted.uncertaintyMm() > RISE * stated) {
      sentences.add(why(bridge, fitted, held));
    }
    sentences.add(
        worth && best != null
            ? offer(best)
            : "No single further master would lower it by 5 % or more.");
    return new CalibrationAdvice(
        radiusMm, stated, fitted.uncertaintyMm(), held, worth ? best : null, sentences);
  }

  private static String compared(double radiusMm, double stated, double fitted) {
    String change =
        fitted > RISE * stated ? "raises" : fitted * RISE < stated ? "lowers" : "hardly changes";
    return format(
        "At radius %.0f mm the calibration %s the standard uncertainty: %.3g mm by the stated span,"
            + " %.3g mm by the masters.",
        radiusMm, change, stated, fitted);
  }

  private static String why(Bridge bridge, MasterPlan.Fitted fitted, @Nullable Double held) {
    if (held != null && held * RISE < fitted.uncertaintyMm()) {
      return format(
          "The masters free the zero: span and zero are fitted together from %d masters and trade"
              + " off (correlation %.2f). With the zero held at 0 it would be %.3g mm; whether the"
              + " zero may be held, only a good zero on the flat can say.",
          fitted.masters(), fitted.correlation(), held);
    }
    return format(
        "The masters tell the span to a standard uncertainty of %.3g mm, the bridge states %.3g mm:"
            + " masters of smaller uncertainty, or more depth, are needed to do better.",
        fitted.spanUncertaintyMm(), bridge.spanUncertaintyMm());
  }

  private static String offer(Addition best) {
    return format(
        "One more master, %s, radius near %.0f mm, as well known as the best one here, would make"
            + " it %.3g mm.",
        best.face() == Face.OUTER ? "convex" : "concave", best.masterRadiusMm(), best.fittedMm());
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
