package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Scope;

/** Every figure with its interval and how it was computed. */
final class FiguresSection {
  /** Name of a figure, and its share of the width. */
  private static final Map<FigureKind, Double> SHORT = new EnumMap<>(FigureKind.class);

  static {
    SHORT.put(FigureKind.N, 1.5);
    SHORT.put(FigureKind.MEAN, 1.4);
    SHORT.put(FigureKind.OVERALL, 1.8);
    SHORT.put(FigureKind.WITHIN, 1.8);
    SHORT.put(FigureKind.MINIMUM, 1.4);
    SHORT.put(FigureKind.MAXIMUM, 1.4);
    List.of(FigureKind.CP, FigureKind.CPK, FigureKind.PP, FigureKind.PPK)
        .forEach(index -> SHORT.put(index, 0.9));
  }

  private FiguresSection() {}

  static void write(JobReport report, Paper paper) {
    if (report.summaries().isEmpty()) {
      return;
    }
    Summary first = report.summaries().get(0);
    paper.heading("Statistics · " + first.characteristic() + scope(first));
    paper.add(table(first, report.lengths(), paper));
  }

  /** The positions side by side, where there are several. */
  static void writeByPosition(JobReport report, Paper paper) {
    if (report.summaries().size() > 1) {
      paper.heading("Statistics · by position");
      paper.add(others(report.summaries(), report.lengths(), paper));
      paper.text("Computed as above; their intervals are in the statistics export.");
    }
  }

  /** One row each, without intervals. */
  private static PdfPTable others(List<Summary> summaries, PrintedLengths lengths, Paper paper) {
    List<Column> columns = new ArrayList<>(List.of(Column.words("characteristic", 2.2)));
    SHORT.forEach(
        (kind, width) -> columns.add(Column.number(heading(kind, summaries, lengths), width)));
    PdfPTable table = paper.table(columns.toArray(Column[]::new));
    for (Summary summary : summaries) {
      paper.strong(table, summary.characteristic(), Paper.INK);
      for (FigureKind kind : SHORT.keySet()) {
        paper.right(
            table, summary.figure(kind).map(f -> lengths.figure(f, f.value())).orElse(Print.NONE));
      }
    }
    return table;
  }

  /** With the unit, where the figure has one. */
  private static String heading(FigureKind kind, List<Summary> all, PrintedLengths lengths) {
    String unit = all.get(0).figure(kind).map(Figure::unit).orElse("");
    return unit.isEmpty() ? kind.title() : kind.title() + ", " + lengths.shown(unit);
  }

  private static String scope(Summary summary) {
    return " · " + over(summary) + ", " + Print.counted(summary.count(), "reading");
  }

  /** Over which readings its figures are. */
  static String over(Summary summary) {
    return summary.scope() == Scope.PHASE ? "since the last change" : "whole job";
  }

  private static PdfPTable table(Summary summary, PrintedLengths lengths, Paper paper) {
    PdfPTable table =
        paper.table(
            Column.words("figure", 2.5),
            Column.number("value", 1.2),
            Column.number("95 % interval", 2.3),
            Column.words("unit", 0.7),
            Column.words("how it was computed", 4.9),
            Column.words("source", 2.8));
    for (Figure figure : summary.figures()) {
      paper.strong(table, figure.kind().title(), Paper.INK);
      paper.right(table, lengths.figure(figure, figure.value()));
      paper.right(table, interval(figure, lengths));
      paper.row(table, lengths.shown(figure.unit()), figure.method(), figure.source());
    }
    return table;
  }

  private static String interval(Figure figure, PrintedLengths lengths) {
    Double confidence = figure.confidence();
    if (confidence == null || (figure.lower() == null && figure.upper() == null)) {
      return "";
    }
    String interval =
        lengths.figure(figure, figure.lower()) + " to " + lengths.figure(figure, figure.upper());
    return confidence == 0.95 ? interval : interval + " at " + Print.plain(confidence);
  }
}
