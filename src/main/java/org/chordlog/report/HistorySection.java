package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import org.chordlog.measure.JobEvent;
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
    SignalsSection.write(report, paper);
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
