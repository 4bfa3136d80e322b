package org.chordlog.cli.study;

import java.util.Locale;
import org.chordlog.measure.Capital;
import org.chordlog.measure.Decimals;
import org.chordlog.study.AnovaRow;
import org.chordlog.study.BudgetComparison;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyFigure.Judged;
import org.chordlog.study.StudyResult;
import org.chordlog.study.StudyTest;
import org.jspecify.annotations.Nullable;

/** A study for people. */
final class StudyText {
  private static final String NONE = "–";
  private static final String OPEN = "open";
  private static final String FIGURE = "%10s %-2s  %-20s  %s%s";

  private final StringBuilder text = new StringBuilder();

  StudyText(StudyResult result, @Nullable BudgetComparison budget) {
    line(
        "Study %s (%s): %s",
        StudyKinds.typed(result.kind()), result.kind().words(), result.design());
    line("%s", result.conclusion().says().toString());
    line("");
    line(FIGURE, "Value", "", "95 % interval", "Figure", "");
    result.figures().forEach(this::figure);
    result.alternatives().forEach(this::alternative);
    if (!result.anova().isEmpty()) {
      line("");
      line(
          "%-34s %12s %8s %12s %10s %10s",
          "Analysis of variance", "squares", "degrees", "mean square", "F", "p");
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
        FIGURE,
        number(figure.value(), figure, NONE),
        figure.unit(),
        interval(figure),
        Capital.of(figure.words().toString()),
        judged == null ? "" : ": " + judged.verdict().words() + ", " + judged.criterion());
  }

  private static String interval(StudyFigure figure) {
    boolean none =
        figure.confidence() == null || (figure.lower() == null && figure.upper() == null);
    return none
        ? NONE
        : number(figure.lower(), figure, OPEN) + " to " + number(figure.upper(), figure, OPEN);
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
        "%-34s %12s %8s %12s %10s %10s",
        Capital.of(row.source()),
        square(row.sumOfSquares()),
        Decimals.significant(row.degreesOfFreedom()),
        square(row.meanSquare()),
        row.f() == null ? NONE : Decimals.significant(row.f()),
        row.p() == null ? NONE : Decimals.probability(row.p()));
  }

  private void test(StudyTest test) {
    line("%s: %s", Capital.of(test.name()), test.says());
  }

  /** As pages and reports have it. */
  private static String number(@Nullable Double value, StudyFigure of, String none) {
    return value == null ? none : Decimals.significant(value, of.lower(), of.upper());
  }

  private static String square(@Nullable Double value) {
    return value == null ? NONE : Decimals.powerOfTen(value);
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
