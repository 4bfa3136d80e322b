package org.chordlog.radius;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
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
    List<Sentence> sentences) {
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
    List<Sentence> sentences = new ArrayList<>();
    sentences.add(compared(radiusMm, stated, fitted.uncertaintyMm()));
    if (fitted.uncertaintyMm() > RISE * stated) {
      sentences.add(why(bridge, fitted, held));
    }
    sentences.add(
        worth && best != null
            ? offer(best)
            : Sentence.plain("No single further master would lower it by 5 % or more."));
    return new CalibrationAdvice(
        radiusMm, stated, fitted.uncertaintyMm(), held, worth ? best : null, sentences);
  }

  private static Sentence compared(double radiusMm, double stated, double fitted) {
    String change =
        fitted > RISE * stated ? "raises" : fitted * RISE < stated ? "lowers" : "hardly changes";
    return Sentence.of(
        "At radius %s the calibration %s the standard uncertainty: %s by the stated span, %s by"
            + " the masters.",
        Quantity.stated(radiusMm),
        change,
        Quantity.uncertainty(stated),
        Quantity.uncertainty(fitted));
  }

  private static Sentence why(Bridge bridge, MasterPlan.Fitted fitted, @Nullable Double held) {
    if (held != null && held * RISE < fitted.uncertaintyMm()) {
      return Sentence.of(
          "The masters free the zero: span and zero are fitted together from %d masters and trade"
              + " off (correlation %.2f). With the zero held at 0 it would be %s; whether the"
              + " zero may be held, only a good zero on the flat can say.",
          fitted.masters(), fitted.correlation(), Quantity.uncertainty(held));
    }
    return Sentence.of(
        "The masters tell the span to a standard uncertainty of %s, the bridge states %s: masters"
            + " of smaller uncertainty, or more depth, are needed to do better.",
        Quantity.uncertainty(fitted.spanUncertaintyMm()),
        Quantity.stated(bridge.spanUncertaintyMm()));
  }

  private static Sentence offer(Addition best) {
    return Sentence.of(
        "One more master, %s, radius near %s, as well known as the best one here, would make it"
            + " %s.",
        best.face() == Face.OUTER ? "convex" : "concave",
        Quantity.fixed(best.masterRadiusMm(), 0),
        Quantity.uncertainty(best.fittedMm()));
  }
}
