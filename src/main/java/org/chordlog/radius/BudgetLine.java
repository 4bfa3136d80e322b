package org.chordlog.radius;

import org.chordlog.measure.Check;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * One line of an uncertainty budget: the source, its value in words, its standard uncertainty in
 * {@code unit}, the sensitivity of the result to it, and their product's magnitude. {@code
 * degreesOfFreedom} is null where they are infinite.
 */
public record BudgetLine(
    String source,
    Sentence value,
    String unit,
    Distribution distribution,
    double standardUncertainty,
    double sensitivity,
    double contribution,
    @Nullable Double degreesOfFreedom) {
  public BudgetLine {
    Check.text("source", source);
    Check.notNegative("standardUncertainty", standardUncertainty);
    Check.finite("sensitivity", sensitivity);
    if (degreesOfFreedom != null) {
      Check.positive("degreesOfFreedom", degreesOfFreedom);
    }
  }

  static BudgetLine of(
      String source,
      Sentence value,
      String unit,
      Distribution distribution,
      double standardUncertainty,
      double sensitivity,
      @Nullable Double degreesOfFreedom) {
    double contribution = Math.abs(sensitivity) * standardUncertainty;
    return new BudgetLine(
        source,
        value,
        unit,
        distribution,
        standardUncertainty,
        sensitivity,
        contribution,
        degreesOfFreedom);
  }
}
