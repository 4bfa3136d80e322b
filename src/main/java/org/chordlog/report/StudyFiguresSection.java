package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.List;
import org.chordlog.measure.Capital;
import org.chordlog.measure.Decimals;
import org.chordlog.study.AnovaRow;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyResult;
import org.chordlog.study.StudyTest;
import org.chordlog.study.StudyVerdict;
import org.jspecify.annotations.Nullable;

/** Figures of a study with their intervals and verdicts, its analysis of variance and its tests. */
final class StudyFiguresSection {
  /** Between a table and the text after it, points. */
  private static final float SPACE = 6;

  private final StudyResult result;
  private final PrintedLengths lengths;
  private final Paper paper;

  StudyFiguresSection(StudyReport report, Paper paper) {
    this.result = report.result();
    this.lengths = report.lengths();
    this.paper = paper;
  }

  void writeMain() {
    paper.add(table(result.mainFigures()));
  }

  /** The first so many figures, then what they rest on. */
  void writeAll(int rows) {
    if (rows > 0) {
      paper.heading("All figures");
      paper.add(table(result.figures().stream().limit(rows).toList()));
    }
    int left = result.figures().size() - rows;
    if (left > 0) {
      paper.text(Print.counted(left, "more figure") + " on the study's page.");
    }
    anova();
    result.tests().forEach(this::test);
  }

  private PdfPTable table(List<StudyFigure> figures) {
    PdfPTable table =
        paper.table(
            Column.words("figure", 4.9),
            Column.number("value", 1.2),
            Column.words("unit", 0.6),
            Column.number("95 % interval", 2),
            Column.words("verdict by the interval", 2.3));
    table.setSpacingAfter(SPACE);
    for (StudyFigure each : figures) {
      paper.strong(table, Capital.of(lengths.said(each.words())), Paper.INK);
      paper.right(table, number(each.value(), each, Print.NONE));
      paper.row(table, lengths.shown(each.unit()));
      paper.right(table, interval(each));
      verdict(table, each.judged());
    }
    return table;
  }

  private void verdict(PdfPTable table, StudyFigure.@Nullable Judged judged) {
    if (judged == null) {
      paper.row(table, "");
      return;
    }
    boolean fails = judged.verdict() == StudyVerdict.FAILS;
    paper.strong(
        table,
        judged.verdict().words() + ": " + lengths.said(judged.criterion()),
        fails ? Paper.ALERT : Paper.INK);
  }

  private String interval(StudyFigure figure) {
    boolean none =
        figure.confidence() == null || (figure.lower() == null && figure.upper() == null);
    return none
        ? Print.NONE
        : number(figure.lower(), figure, "open") + " to " + number(figure.upper(), figure, "open");
  }

  /** As a study's page has it. */
  private String number(@Nullable Double value, StudyFigure of, String none) {
    Double shown = lengths.valueOrNull(value, of.unit());
    return shown == null
        ? none
        : Decimals.significant(
            shown,
            lengths.valueOrNull(of.lower(), of.unit()),
            lengths.valueOrNull(of.upper(), of.unit()));
  }

  private void anova() {
    if (result.anova().isEmpty()) {
      return;
    }
    paper.heading("Analysis of variance");
    PdfPTable table =
        paper.table(
            Column.words("source", 3),
            Column.number("degrees of freedom", 1.6),
            Column.number("sum of squares, " + lengths.unitOfSquaredCurvature(), 2),
            Column.number("mean square, " + lengths.unitOfSquaredCurvature(), 2),
            Column.number("F", 1),
            Column.number("p", 1));
    table.setSpacingAfter(SPACE);
    for (AnovaRow each : result.anova()) {
      paper.strong(table, Capital.of(each.source()), Paper.INK);
      paper.right(table, Decimals.significant(each.degreesOfFreedom()));
      paper.right(table, square(each.sumOfSquares()));
      paper.right(table, square(each.meanSquare()));
      paper.right(table, each.f() == null ? Print.NONE : Decimals.significant(each.f()));
      paper.right(table, each.p() == null ? Print.NONE : Decimals.probability(each.p()));
    }
    paper.add(table);
  }

  private String square(@Nullable Double value) {
    return value == null ? Print.NONE : Decimals.powerOfTen(lengths.squaredCurvature(value));
  }

  private void test(StudyTest test) {
    paper.text(Capital.of(test.name()) + ": " + test.says());
  }
}
