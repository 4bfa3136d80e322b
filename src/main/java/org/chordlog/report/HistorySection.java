package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.List;
import org.chordlog.measure.JobEvent;
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
            List.of("time", "event", "after reading", "setting", "material lot", "note", "by"),
            2.2f,
            1.8f,
            1.2f,
            1.6f,
            1.4f,
            3.2f,
            1.4f);
    for (JobEvent event : report.events()) {
      paper.row(table, Print.time(event.atMicros(), report.zone()), Print.of(event.kind()));
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
