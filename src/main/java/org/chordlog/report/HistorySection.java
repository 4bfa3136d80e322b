package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.SpecificationRevision;
import org.chordlog.verdict.Words;
import org.jspecify.annotations.Nullable;

/** What happened in the job. */
final class HistorySection {
  private HistorySection() {}

  static void write(JobReport report, Paper paper) {
    paper.heading("Events");
    if (report.events().isEmpty()) {
      paper.text("None recorded.");
    } else {
      paper.add(events(report, paper));
    }
    if (report.log().revisions().size() > 1) {
      paper.heading("Revisions of the limits");
      paper.add(revisions(report, paper));
    }
    SignalsSection.write(report, paper);
    report.log().causes().forEach(each -> paper.text(each.words(report.zone())));
  }

  private static PdfPTable revisions(JobReport report, Paper paper) {
    PdfPTable table =
        paper.table(
            Column.number("revision", 0.8),
            Column.words("in force from", 2.2),
            Column.words("target", 1.4),
            Column.words("limits", 2.4),
            Column.words("why", 3.2),
            Column.words("by", 1.4));
    for (SpecificationRevision each : report.log().revisions()) {
      paper.right(table, String.valueOf(each.revision()));
      paper.row(
          table,
          Print.time(each.atMicros(), report.zone()),
          report.lengths().asked(each.to().targetMm()),
          report.lengths().asked(each.to().lowerLimitMm())
              + " to "
              + report.lengths().asked(each.to().upperLimitMm()),
          each.why(),
          each.by());
    }
    return table;
  }

  private static PdfPTable events(JobReport report, Paper paper) {
    PdfPTable table =
        paper.table(
            Column.words("time", 2.2),
            Column.words("event", 1.8),
            Column.number("after reading", 1.2),
            Column.words("setting", 1.6),
            Column.words("material lot", 1.4),
            Column.words("note", 3.2),
            Column.words("by", 1.4));
    for (JobEvent event : report.events()) {
      paper.row(table, Print.time(event.atMicros(), report.zone()), Words.of(event.kind()));
      paper.right(table, String.valueOf(event.afterReadingId()));
      paper.row(table, setting(event), event.materialLot(), event.note(), event.by());
    }
    return table;
  }

  private static String setting(JobEvent event) {
    return event.settingBefore() == null && event.settingAfter() == null
        ? ""
        : setting(event.settingBefore()) + " → " + setting(event.settingAfter());
  }

  private static String setting(@Nullable Double value) {
    return value == null ? Print.NONE : Print.plain(value);
  }
}
