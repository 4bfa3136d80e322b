package org.chordlog.cli.gauge;

import java.util.List;
import java.util.Locale;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.Decimals;
import org.chordlog.radius.Budget;
import org.chordlog.radius.BudgetLine;

/** An uncertainty budget as a table for a terminal, its lengths in the command's unit. */
record BudgetText(LengthOptions lengths, Budget budget) {
  private static final double MM_PER_INCH = 25.4;
  private static final double INCHES = 1_000;

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    row(text, "source", "value", "distribution", "u", "sensitivity", "contribution", "dof");
    budget.lines().forEach(line -> row(text, line));
    text.append(
        String.format(
            Locale.ROOT,
            "combined u = %s, ν = %s, k = %.3f, U = %s; ± U holds about %.1f %%%n",
            shown("%.4g", budget.combined(), budget.unit()),
            degrees(budget.degreesOfFreedom()),
            budget.coverageFactor(),
            shown("%.4g", budget.expanded(), budget.unit()),
            100 * budget.coverage()));
    return text.toString();
  }

  private void row(StringBuilder text, BudgetLine line) {
    Double dof = line.degreesOfFreedom();
    double sensitivity = line.sensitivity() * scale(budget.unit()) / scale(line.unit());
    row(
        text,
        line.source(),
        line.value().in(lengths.lengths()),
        line.distribution().word(),
        shown("%.3g", line.standardUncertainty(), line.unit()),
        Decimals.withMinus(String.format(Locale.ROOT, "%.4g", sensitivity)),
        shown("%.3g", line.contribution(), budget.unit()),
        dof == null ? "∞" : degrees(dof));
  }

  private static void row(StringBuilder text, String... cells) {
    text.append(
        String.format(
            Locale.ROOT, "%-27s %-22s %-12s %-15s %12s %15s %6s%n", List.of(cells).toArray()));
  }

  private String shown(String format, double value, String unit) {
    return Decimals.withMinus(String.format(Locale.ROOT, format, value * scale(unit)))
        + " "
        + sign(unit);
  }

  /** What a figure in that unit is multiplied by. */
  private double scale(String unit) {
    if (lengths.metric()) {
      return 1;
    }
    return switch (unit) {
      case "mm" -> 1 / MM_PER_INCH;
      case "1/km" -> MM_PER_INCH / INCHES;
      default -> 1;
    };
  }

  private String sign(String unit) {
    if (lengths.metric()) {
      return unit;
    }
    return switch (unit) {
      case "mm" -> lengths.sign();
      case "1/km" -> "per 1,000 in";
      default -> unit;
    };
  }

  private static String degrees(double degrees) {
    return degrees >= Budget.INFINITE_DEGREES ? "∞" : String.format(Locale.ROOT, "%.1f", degrees);
  }
}
