package org.chordlog.cli.gauge;

import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.radius.Budget;
import org.chordlog.radius.MonteCarloResult;
import org.jspecify.annotations.Nullable;

/** What {@code radius} answers for one depth. */
record RadiusAnswer(
    double depthMm,
    Face face,
    RadiusEstimate radius,
    Decision decision,
    @Nullable String skew,
    @Nullable Budget budget,
    @Nullable MonteCarloResult monteCarlo) {
  String text(LengthOptions lengths, boolean withBudget) {
    RadiusText words = new RadiusText(lengths);
    StringBuilder text = new StringBuilder();
    text.append(face.words()).append(": ").append(words.line(radius)).append('\n');
    if (decision != Decision.NO_LIMITS) {
      text.append(RadiusText.verdict(decision)).append('\n');
    }
    if (skew != null) {
      text.append(skew).append('\n');
    }
    if (withBudget && budget != null) {
      text.append('\n').append(new BudgetText(lengths, budget));
    }
    if (monteCarlo != null) {
      text.append('\n').append(words.monteCarlo(monteCarlo, radius));
    }
    return text.toString();
  }
}
