package org.chordlog.bench;

import java.util.Locale;
import java.util.Optional;

/** One row of the table of budgets; {@code ratio} is figure to baseline of the same run. */
record BudgetRow(
    String what, String figure, String baseline, double ratio, String budget, boolean met) {
  private static final String MARK = "BUDGET|";

  /** As a line that {@link BudgetTable} finds. */
  void print() {
    System.out.printf(
        Locale.ROOT,
        "%s%s|%s|%s|%.2f|%s|%s%n",
        MARK,
        what,
        figure,
        baseline,
        ratio,
        budget,
        met ? "met" : "**missed**");
  }

  /** The line as a row of Markdown, if it is one. */
  static Optional<String> row(String line) {
    return line.startsWith(MARK)
        ? Optional.of("| " + line.substring(MARK.length()).replace("|", " | ") + " |")
        : Optional.empty();
  }
}
