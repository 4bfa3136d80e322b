package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.LinkedHashMap;
import java.util.Map;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;

/** The set-ups a job was measured with, and the interim checks of its gauge. */
final class GaugeHistory {
  private GaugeHistory() {}

  /** Readings of one set-up: the first, the last, how many. */
  private record Used(long first, long last, int count) {
    Used with(long id) {
      return new Used(first, id, count + 1);
    }
  }

  static void write(JobReport report, Paper paper) {
    if (report.measured().setUps().size() > 1) {
      paper.text("The above is of the newest reading. The job was measured with these set-ups:");
      paper.add(setUps(report, paper));
    }
    if (report.gauge().checks().isEmpty()) {
      paper.text("Interim checks: none recorded for the bridges used.");
    } else {
      paper.add(checks(report, paper));
    }
  }

  private static PdfPTable setUps(JobReport report, Paper paper) {
    PdfPTable table =
        paper.table(
            Column.words("readings", 1.6),
            Column.number("count", 0.8),
            Column.words("bridge", 1.6),
            Column.number(report.lengths().heading("span used"), 1.4),
            Column.words("zero", 2.8),
            Column.words("calibration", 2.2));
    used(report)
        .forEach(
            (id, used) -> {
              SetUp setUp = report.measured().setUps().get(id);
              if (setUp != null) {
                row(report, paper, table, setUp, used);
              }
            });
    table.setSpacingAfter(6);
    return table;
  }

  private static Map<Long, Used> used(JobReport report) {
    Map<Long, Used> used = new LinkedHashMap<>();
    for (Reading reading : report.readings()) {
      long id = reading.id();
      used.merge(reading.setUpId(), new Used(id, id, 1), (old, one) -> old.with(one.last()));
    }
    return used;
  }

  private static void row(JobReport report, Paper paper, PdfPTable table, SetUp setUp, Used used) {
    Calibration calibration = setUp.calibration();
    double span = calibration == null ? setUp.bridge().spanMm() : calibration.spanMm();
    paper.row(table, used.first() + " to " + used.last());
    paper.right(table, String.valueOf(used.count()));
    paper.row(table, setUp.bridge().name());
    paper.right(table, report.lengths().figure(span));
    paper.row(
        table,
        GaugeSection.zero(setUp.zero(), report),
        calibration == null ? "none" : Print.time(calibration.takenAtMicros(), report.zone()));
  }

  private static PdfPTable checks(JobReport report, Paper paper) {
    PrintedLengths lengths = report.lengths();
    PdfPTable table =
        paper.table(
            Column.words("interim check", 2.2),
            Column.number(lengths.heading("radius"), 1.4),
            Column.number(lengths.heading("master"), 1.4),
            Column.number(lengths.heading("limit"), 1.2),
            Column.words("outcome", 1.4),
            Column.words("by", 1.6));
    table.setSpacingBefore(6);
    table.setSpacingAfter(6);
    for (InterimCheck check : report.gauge().checks()) {
      paper.row(table, Print.time(check.takenAtMicros(), report.zone()));
      paper.right(table, lengths.fixed(check.radiusMm(), 2));
      paper.right(table, lengths.fixed(check.masterRadiusMm(), 2));
      paper.right(table, "± " + lengths.bare(check.limitMm()));
      paper.strong(
          table,
          check.passed() ? "✓ passed" : "✗ failed",
          check.passed() ? Paper.INK : Paper.ALERT);
      paper.row(table, check.takenBy());
    }
    return table;
  }
}
