package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.awt.Color;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Reading;
import org.chordlog.verdict.Words;

/** Every reading, or the newest where there are too many to print. */
final class ReadingsSection {
  private ReadingsSection() {}

  static void write(JobReport report, Paper paper, Runnable rowDone) {
    paper.heading("Readings");
    if (report.readings().isEmpty()) {
      paper.text("None.");
      return;
    }
    if (report.readings().size() < report.measured().count()) {
      paper.text(
          "The newest %s of %s; all are in the CSV export."
              .formatted(report.readings().size(), report.measured().count()));
    }
    PdfPTable table =
        paper.table(
            Column.words("no.", 0.9),
            Column.words("time", 2.45),
            Column.number("piece", 0.95),
            Column.words("position", 1.65),
            Column.number(report.lengths().heading("depth"), 1.3),
            Column.number(report.lengths().heading("radius"), 1.35),
            Column.number("interval 95.45 %", 2.3),
            Column.words("decision", 1.95),
            Column.words("remarks", 2.65));
    for (Reading reading : report.readings()) {
      row(report, reading, paper, table);
      rowDone.run();
    }
    paper.add(table);
  }

  private static void row(JobReport report, Reading reading, Paper paper, PdfPTable table) {
    paper.row(table, String.valueOf(reading.id()), Print.time(reading.wallMicros(), report.zone()));
    paper.right(table, String.valueOf(reading.piece()));
    paper.row(table, reading.position());
    paper.right(table, report.lengths().depth(reading.depthNm()));
    paper.right(table, report.lengths().radius(reading.radius()));
    paper.right(table, report.lengths().interval(reading.radius()));
    Decision now = report.decision(reading);
    Color colour = now == Decision.DOES_NOT_CONFORM ? Paper.ALERT : Paper.INK;
    paper.strong(table, Print.of(now), colour);
    paper.row(table, remarks(report, reading));
  }

  static String remarks(JobReport report, Reading reading) {
    String exclusion = report.exclusion(reading.id());
    int pass = reading.circumstances().pass();
    String rolled = pass > 1 ? "pass " + pass : "";
    String then =
        report.decision(reading) == reading.decision()
            ? ""
            : "when measured: " + Print.of(reading.decision()) + revision(reading);
    String marks =
        reading.marks().stream().sorted().map(Words::of).collect(Collectors.joining(", "));
    String excluded = exclusion.isEmpty() ? "" : "excluded: " + exclusion;
    return Stream.of(rolled, then, marks, excluded)
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("; "));
  }

  private static String revision(Reading reading) {
    Integer revision = reading.circumstances().revision();
    return revision == null ? "" : " (limits of revision " + revision + ")";
  }
}
