package org.chordlog.study;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Check;
import org.chordlog.measure.Decimals;
import org.jspecify.annotations.Nullable;

/**
 * The standard uncertainty that a study shows over the one that the reading's own budget states, at
 * one radius, with the study's interval. A factor above 1.5 either way is a caution.
 */
public record BudgetComparison(
    double ratio, @Nullable Double lower, @Nullable Double upper, String says) {
  /** Repeatability on one master. */
  private static final String DEVIATION = "standardDeviation";

  /** Common practice, no source. */
  public static final double MOST_FACTOR = 1.5;

  /** What can be compared, the most complete first. */
  private static final List<String> COMPARED =
      List.of("u_MP", "GRR", PlacingStudy.BY_EYE, StabilityStudy.ONE, DEVIATION);

  /** The study's figure to compare with a budget; empty where it has none. */
  public static Optional<StudyFigure> figure(StudyResult result) {
    return COMPARED.stream().flatMap(name -> result.figure(name).stream()).findFirst();
  }

  /** {@code study} is a standard deviation such as GRR or u_MP, in the unit of the budget. */
  public static BudgetComparison of(StudyFigure study, double budgetUncertainty) {
    double ratio = ratio(study, budgetUncertainty);
    return told(study, budgetUncertainty, says(study.name(), ratio));
  }

  /**
   * The same of a figure that holds the pieces' own differences too, so that the gauge is at most
   * that: it can show a budget to be too careful, never one that leaves something out.
   */
  public static BudgetComparison ofMost(StudyFigure study, double budgetUncertainty) {
    double ratio = ratio(study, budgetUncertainty);
    return told(study, budgetUncertainty, saysOfMost(ratio));
  }

  private static double ratio(StudyFigure study, double budget) {
    Check.positive("budget uncertainty", budget);
    Double value = study.value();
    return value == null ? Double.NaN : value / budget;
  }

  private static BudgetComparison told(StudyFigure study, double budget, String says) {
    return new BudgetComparison(
        ratio(study, budget), over(study.lower(), budget), over(study.upper(), budget), says);
  }

  private static @Nullable Double over(@Nullable Double end, double budget) {
    return end == null ? null : (Double) (end / budget);
  }

  public boolean caution() {
    return ratio > MOST_FACTOR || ratio < 1 / MOST_FACTOR;
  }

  private static String times(double ratio) {
    return Decimals.significant(ratio) + " times the budget's standard uncertainty";
  }

  private static String saysOfMost(double ratio) {
    String times = "The study shows at most " + times(ratio);
    String with = ", the pieces' own differences within a lot included: ";
    if (ratio > MOST_FACTOR) {
      return times
          + with
          + "it can't tell whether the budget leaves something out or the pieces differ.";
    }
    return ratio < 1 / MOST_FACTOR
        ? times + with + "the budget is too careful, or everyday measuring is harder."
        : times + with + "the gauge does not scatter more than its budget says.";
  }

  private static String says(String figure, double ratio) {
    String times = "The study shows " + times(ratio);
    if (ratio > MOST_FACTOR) {
      return times + ": it contains something that the budget leaves out, such as " + more(figure);
    }
    return ratio < 1 / MOST_FACTOR
        ? times
            + ": it was easier than everyday measuring, or the budget is too careful."
            + less(figure)
        : times + ": they agree.";
  }

  private static String more(String figure) {
    return switch (figure) {
      case PlacingStudy.BY_EYE -> "finding the place by eye.";
      case StabilityStudy.ONE -> "what changes from day to day: warmth, wear, setting zero.";
      case DEVIATION -> "how the bridge is put down.";
      default -> "operators, placing, differences between pieces or a bias.";
    };
  }

  /** On masters alone. */
  private static String less(String figure) {
    return figure.equals(DEVIATION) || figure.equals(StabilityStudy.ONE)
        ? " A master is easier to measure than a piece, and an error that never changes, as of a"
            + " calibration, does not show in scatter."
        : "";
  }
}
