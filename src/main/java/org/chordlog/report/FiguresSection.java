package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.Figure;
import org.chordlog.stats.Summary;

/** Every figure with its interval and how it was computed. */
final class FiguresSection {
  private static final List<String> SHORT =
      List.of(
          "n",
          "mean",
          "standardDeviationOverall",
          "standardDeviationWithin",
          "minimum",
          "maximum",
          "Cp",
          "Cpk",
          "Pp",
          "Ppk");

  private FiguresSection() {}

  static void write(JobReport report, Paper paper) {
    if (report.summaries().isEmpty()) {
      return;
    }
    Summary first = report.summaries().get(0);
    paper.heading("Statistics · " + first.characteristic() + scope(first));
    paper.add(table(first, paper));
  }

  /** The positions side by side, where there are several. */
  static void writeByPosition(JobReport report, Paper paper) {
    if (report.summaries().size() > 1) {
      paper.heading("Statistics · by position");
      paper.add(others(report.summaries(), paper));
      paper.text("Computed as above; an interval stands in the statistics export.");
    }
  }

  /** One row each, without intervals. */
  private static PdfPTable others(List<Summary> summaries, Paper paper) {
    List<String> heads = new ArrayList<>(List.of("characteristic"));
    SHORT.forEach(name -> heads.add(FigureNames.of(name)));
    PdfPTable table = paper.table(heads, 2.2f, 1, 1.4f, 2, 2, 1.4f, 1.4f, 1, 1, 1, 1);
    for (Summary summary : summaries) {
      paper.strong(table, summary.characteristic(), Paper.INK);
      for (String name : SHORT) {
        paper.right(
            table, summary.figure(name).map(f -> Print.figure(f, f.value())).orElse(Print.NONE));
      }
    }
    return table;
  }

  private static String scope(Summary summary) {
    String over = summary.scope() == Summary.Scope.PHASE ? "newest phase" : "whole job";
    return " · %s, %d readings".formatted(over, summary.count());
  }

  private static PdfPTable table(Summary summary, Paper paper) {
    PdfPTable table =
        paper.table(
            List.of("figure", "value", "95 % interval", "unit", "how it was computed", "source"),
            2.3f,
            1.4f,
            2.3f,
            0.8f,
            5.4f,
            2);
    for (Figure figure : summary.figures()) {
      paper.strong(table, FigureNames.of(figure.name()), Paper.INK);
      paper.right(table, Print.figure(figure, figure.value()));
      paper.row(table, interval(figure), figure.unit(), figure.method(), figure.source());
    }
    return table;
  }

  private static String interval(Figure figure) {
    Double confidence = figure.confidence();
    if (confidence == null || (figure.lower() == null && figure.upper() == null)) {
      return "";
    }
    String interval =
        Print.figure(figure, figure.lower()) + " to " + Print.figure(figure, figure.upper());
    return confidence == 0.95 ? interval : interval + " at " + Print.plain(confidence);
  }
}
