package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.List;
import java.util.Locale;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.verdict.CapabilityVerdict;
import org.jspecify.annotations.Nullable;

/**
 * The job by its material lots, where it has several, and by its passes, where one was repeated.
 */
final class PartsSection {
  private PartsSection() {}

  static void write(JobReport report, Paper paper) {
    List<LotSummary> lots = report.statistics().lots();
    if (lots.size() > 1) {
      paper.heading("Statistics · by material lot");
      paper.add(lots(lots, report.lengths(), paper));
      paper.text(
          "Each lot by itself, whole job; the index is the one that applies to its readings.");
    }
    PassSummary passes = report.statistics().passes();
    if (passes.rolledAgain() > 0) {
      paper.heading("Passes");
      paper.text(sentence(passes));
      paper.add(passes(passes, report.lengths(), paper));
    }
  }

  private static PdfPTable lots(List<LotSummary> lots, PrintedLengths lengths, Paper paper) {
    PdfPTable table =
        paper.table(
            Column.words("material lot", 2.2),
            Column.number("pieces", 1),
            Column.number("readings", 1.1),
            Column.number(lengths.heading("mean"), 1.4),
            Column.number(lengths.heading("standard deviation"), 1.6),
            Column.words("index", 2.4),
            Column.number("value", 1),
            Column.number("95 % interval", 1.8));
    for (LotSummary lot : lots) {
      paper.strong(table, lot.lot().isEmpty() ? "none named" : lot.lot(), Paper.INK);
      paper.right(table, String.valueOf(lot.pieces()));
      paper.right(table, String.valueOf(lot.summary().count()));
      paper.right(table, value(lot, FigureKind.MEAN, lengths));
      paper.right(table, value(lot, FigureKind.OVERALL, lengths));
      index(new CapabilityVerdict(lot.summary(), true).index().orElse(null), paper, table);
    }
    return table;
  }

  private static void index(@Nullable Figure index, Paper paper, PdfPTable table) {
    paper.row(table, index == null ? "" : index.kind().title());
    paper.right(table, index == null ? Print.NONE : Print.figure(index, index.value()));
    paper.right(
        table,
        index == null || index.lower() == null
            ? ""
            : Print.figure(index, index.lower()) + " to " + Print.figure(index, index.upper()));
  }

  private static String value(LotSummary lot, FigureKind kind, PrintedLengths lengths) {
    return lot.summary().figure(kind).map(f -> lengths.figure(f, f.value())).orElse(Print.NONE);
  }

  private static String sentence(PassSummary passes) {
    return String.format(
        Locale.ROOT,
        "%s of %s took more than one pass (%.1f %%); %.2f passes a piece in the mean. The last pass"
            + " of a piece counts.",
        passes.rolledAgain(),
        Print.counted(passes.pieces(), "piece"),
        100 * passes.shareRolledAgain(),
        passes.meanPasses());
  }

  private static PdfPTable passes(PassSummary passes, PrintedLengths lengths, Paper paper) {
    PdfPTable table =
        paper.table(
            Column.number("pass", 1),
            Column.number("places measured before and after", 2.4),
            Column.number(lengths.heading("mean change of radius"), 2.4),
            Column.number(lengths.heading("standard deviation"), 2.4));
    for (PassSummary.Pass pass : passes.passes()) {
      paper.right(table, String.valueOf(pass.pass()));
      paper.right(table, String.valueOf(pass.places()));
      paper.right(table, lengths.signed(pass.meanChangeMm(), 2));
      paper.right(table, lengths.fixed(pass.standardDeviationMm(), 2));
    }
    return table;
  }
}
