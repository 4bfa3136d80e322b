package org.chordlog.cli.study;

import java.util.Locale;
import org.chordlog.study.AnovaRow;
import org.chordlog.study.BudgetComparison;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyFigure.Judged;
import org.chordlog.study.StudyResult;
import org.chordlog.study.StudyTest;
import org.jspecify.annotations.Nullable;

/** A study for people. */
final class StudyText {
  private final StringBuilder text = new StringBuilder();

  StudyText(StudyResult result, @Nullable BudgetComparison budget) {
    line(
        "Study %s (%s): %s",
        StudyKinds.typed(result.kind()), result.kind().words(), result.design());
    line("%s", result.conclusion().says().toString());
    line("");
    result.figures().forEach(this::figure);
    result.alternatives().forEach(this::alternative);
    if (!result.anova().isEmpty()) {
      line("");
      line(
          "%-34s %12s %6s %12s %10s %12s",
          "Analysis of variance", "squares", "df", "mean square", "F", "p");
      result.anova().forEach(this::row);
    }
    line("");
    result.tests().forEach(this::test);
    if (budget != null) {
      line("Budget: %s", budget.says());
    }
    result.cautions().forEach(caution -> line("Caution: %s", caution));
  }

  private void figure(StudyFigure figure) {
    Judged judged = figure.judged();
    line(
        "%-26s %11s %-2s %-26s %s%s",
        figure.name(),
        number(figure.value()),
        figure.unit(),
        interval(figure),
        figure.words(),
        judged == null ? "" : ": " + judged.verdict().words() + ", " + judged.criterion());
  }

  private static String interval(StudyFigure figure) {
    Double lower = figure.lower();
    Double upper = figure.upper();
    if (lower == null && upper == null) {
      return "";
    }
    return upper == null
        ? "at least " + number(lower)
        : "[" + number(lower) + ", " + number(upper) + "]";
  }

  private void alternative(StudyResult.Alternative other) {
    line("");
    line("The same with %s:", other.name());
    other.figures().stream().filter(StudyText::inShort).forEach(this::figure);
  }

  /** The standard deviations and the gauge's shares. */
  private static boolean inShort(StudyFigure figure) {
    return !figure.name().startsWith("percent") || figure.name().endsWith("GRR");
  }

  private void row(AnovaRow row) {
    line(
        "%-34s %12s %6s %12s %10s %12s",
        row.source(),
        number(row.sumOfSquares()),
        number(row.degreesOfFreedom()),
        number(row.meanSquare()),
        number(row.f()),
        number(row.p()));
  }

  private void test(StudyTest test) {
    String second =
        test.secondDegreesOfFreedom() == null ? "" : ", " + number(test.secondDegreesOfFreedom());
    line(
        "Test of %s: %s with %s%s degrees of freedom, p %s. %s",
        test.name(),
        number(test.statistic()),
        number(test.degreesOfFreedom()),
        second,
        number(test.p()),
        test.says());
  }

  private static String number(@Nullable Double value) {
    return value == null ? "" : StudyNumbers.plain(value);
  }

  private void line(String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values).stripTrailing())
        .append(System.lineSeparator());
  }

  @Override
  public String toString() {
    return text.toString().stripTrailing();
  }
}
