package org.chordlog.cli.gauge;

import java.util.Locale;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.radius.MonteCarloResult;
import org.chordlog.verdict.Words;

/** A radius, its budget and its Monte Carlo in words for a terminal. */
record RadiusText(LengthOptions lengths) {
  private static final double NEARLY_ALIKE = 0.05;

  /** What gives a radius its digits; of a flat as much as shows three. */
  static double expandedMm(RadiusEstimate e) {
    return e.radiusMm() == null ? e.lowerMm() / 10 : Lengths.expandedMm(e);
  }

  String line(RadiusEstimate e) {
    Double radius = e.radiusMm();
    if (radius == null) {
      return "flat: a radius up to "
          + lengths.byUncertainty(e.lowerMm(), expandedMm(e))
          + " "
          + lengths.sign()
          + " would be seen";
    }
    return String.format(
        Locale.ROOT,
        "%s %s %s (at least 95.45 %%, k = %.2f)",
        lengths.byUncertainty(radius, expandedMm(e)),
        plusMinus(e, radius),
        lengths.sign(),
        e.coverageFactor());
  }

  /** Both sides in one where they are nearly alike, as {@code parts/units.js} has it. */
  private String plusMinus(RadiusEstimate e, double radius) {
    double expanded = expandedMm(e);
    double down = radius - e.lowerMm();
    Double upper = e.upperMm();
    if (upper == null) {
      return "+∞ −" + lengths.byUncertainty(down, expanded);
    }
    double up = upper - radius;
    return Math.abs(up - down) < NEARLY_ALIKE * (up + down)
        ? "± " + lengths.byUncertainty(expanded, expanded)
        : "+" + lengths.byUncertainty(up, expanded) + " −" + lengths.byUncertainty(down, expanded);
  }

  static String verdict(Decision decision) {
    return switch (decision) {
      case UNDECIDED -> Words.of(decision) + ": the limit lies within the uncertainty";
      case CONFORMS, DOES_NOT_CONFORM, NO_LIMITS -> Words.of(decision);
    };
  }

  String monteCarlo(MonteCarloResult drawn, RadiusEstimate e) {
    Double upper = drawn.upperMm();
    double half = upper == null ? 0 : (upper - drawn.lowerMm()) / 2;
    String most = upper == null ? "open" : lengths.byUncertainty(upper, half);
    return String.format(
        Locale.ROOT,
        "Monte Carlo, %d trials, seed %d: %s to %s %s; %s%n",
        drawn.trials(),
        drawn.seed(),
        lengths.byUncertainty(drawn.lowerMm(), half),
        most,
        lengths.sign(),
        agreement(drawn, e));
  }

  private static String agreement(MonteCarloResult drawn, RadiusEstimate e) {
    if (drawn.confirms(e, 1)) {
      String digits = drawn.confirms(e, 2) ? "two digits" : "one digit";
      return "the formula's interval holds to " + digits + " of u (JCGM 101, 8)";
    }
    if (drawn.within(e)) {
      return "it lies within the formula's interval, which is the safe one (JCGM 101, 8)";
    }
    return String.format(
        Locale.ROOT,
        "its ends differ from the formula's by %.2f u: prefer these (JCGM 101, 8)",
        drawn.endsApart(e));
  }
}
