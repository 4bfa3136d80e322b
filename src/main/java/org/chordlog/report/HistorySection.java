package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.ChartKind;
import org.chordlog.stats.ChartPoint;
import org.chordlog.stats.ChartSnapshot;
import org.chordlog.stats.Signal;
import org.jspecify.annotations.Nullable;

/** What happened, and where the run tests fired. */
final class HistorySection {
  private static final int MOST_SIGNALS = 200;

  private HistorySection() {}

  static void write(JobReport report, Paper paper) {
    paper.heading("Events");
    if (report.events().isEmpty()) {
      paper.text("None recorded.");
    } else {
      paper.add(events(report, paper));
    }
    paper.heading("Signals of the run tests");
    PdfPTable table = signals(report, paper);
    if (table.size() > 1) {
      paper.add(table);
    } else {
      paper.text("None.");
    }
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

  private static PdfPTable signals(JobReport report, Paper paper) {
    PdfPTable table =
        paper.table(
            List.of("chart", "point", "time", "piece", "value", "test", "points of the run"),
            2.2f,
            1,
            2.2f,
            1,
            1.6f,
            1,
            3);
    int count = 0;
    for (ChartKind kind : ChartKind.values()) {
      ChartSnapshot chart = report.charts().chart(kind).orElse(null);
      if (chart != null) {
        for (ChartPoint point : chart.points()) {
          if (!point.signals().isEmpty() && !point.excluded() && count++ < MOST_SIGNALS) {
            signal(report, paper, table, chart, point);
          }
        }
      }
    }
    return table;
  }

  private static void signal(
      JobReport report, Paper paper, PdfPTable table, ChartSnapshot chart, ChartPoint point) {
    paper.row(
        table,
        PictureKind.valueOf(chart.kind().name()).title(),
        String.valueOf(point.number()),
        Print.time(point.atMicros(), report.zone()),
        String.valueOf(point.piece()));
    paper.right(table, Print.figure(point.value()) + " " + chart.unit());
    paper.row(
        table,
        point.signals().stream()
            .map(s -> String.valueOf(s.test()))
            .collect(Collectors.joining(", ")),
        point.signals().stream()
            .map(HistorySection::run)
            .distinct()
            .collect(Collectors.joining(", ")));
  }

  private static String run(Signal signal) {
    long first = signal.points().get(0);
    long last = signal.points().get(signal.points().size() - 1);
    return first == last ? String.valueOf(first) : first + " to " + last;
  }
}
