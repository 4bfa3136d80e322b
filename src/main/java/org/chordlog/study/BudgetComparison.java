package org.chordlog.study;

import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * The standard uncertainty that a study shows over the one that the reading's own budget states, at
 * one radius, with the study's interval. A factor above 1.5 either way is a caution.
 */
public record BudgetComparison(
    double ratio, @Nullable Double lower, @Nullable Double upper, String says) {
  /** Common practice, no source. */
  public static final double MOST_FACTOR = 1.5;

  /** {@code study} is a standard deviation such as GRR or u_MP, in the unit of the budget. */
  public static BudgetComparison of(StudyFigure study, double budgetUncertainty) {
    Check.positive("budget uncertainty", budgetUncertainty);
    Double value = study.value();
    double ratio = value == null ? Double.NaN : value / budgetUncertainty;
    return new BudgetComparison(
        ratio,
        over(study.lower(), budgetUncertainty),
        over(study.upper(), budgetUncertainty),
        says(ratio));
  }

  private static @Nullable Double over(@Nullable Double end, double budget) {
    return end == null ? null : (Double) (end / budget);
  }

  public boolean caution() {
    return ratio > MOST_FACTOR || ratio < 1 / MOST_FACTOR;
  }

  private static String says(double ratio) {
    String times = Numbers.plain(ratio) + " times the budget's standard uncertainty";
    if (ratio > MOST_FACTOR) {
      return "The study shows "
          + times
          + ": it contains something that the budget leaves out, such as operators, placing,"
          + " differences between pieces or a bias.";
    }
    return ratio < 1 / MOST_FACTOR
        ? "The study shows "
            + times
            + ": it was easier than everyday measuring, or the budget is too careful."
        : "The study shows " + times + ": they agree.";
  }
}
