package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.chart.PictureKind;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Signal;
import org.chordlog.verdict.Counted;
import org.chordlog.verdict.SignalWords;

/** Where the run tests fired, neighbouring points in one row, in words. */
final class SignalsSection {
  private static final int MOST_ROWS = 60;

  private SignalsSection() {}

  static void write(JobReport report, Paper paper) {
    paper.heading("Signals of the run tests");
    List<List<ChartPoint>> all = new ArrayList<>();
    PdfPTable table =
        paper.table(
            Column.words("chart", 1.7),
            Column.words("points", 1.3),
            Column.words("from", 2.1),
            Column.words("to", 2.1),
            Column.words("pieces", 1.3),
            Column.words("what was broken", 4.9));
    for (ChartKind kind : ChartKind.values()) {
      report
          .statistics()
          .charts()
          .chart(kind)
          .ifPresent(chart -> rows(report, paper, table, chart, all));
    }
    if (all.isEmpty()) {
      paper.text("None.");
      return;
    }
    if (all.size() > MOST_ROWS) {
      paper.text("The first %s of %s stretches.".formatted(MOST_ROWS, all.size()));
    }
    paper.add(table);
    unlisted(report, paper);
  }

  /** Of long charts only; see {@link ChartSnapshot}. */
  private static void unlisted(JobReport report, Paper paper) {
    long unlisted = 0;
    for (ChartKind kind : ChartKind.values()) {
      unlisted +=
          report.statistics().charts().chart(kind).map(ChartSnapshot::signallingNotKept).orElse(0L);
    }
    if (unlisted > 0) {
      paper.text(
          "%s more broke a test. %s".formatted(Counted.grouped(unlisted), ChartSnapshot.THINNING));
    }
  }

  private static void rows(
      JobReport report,
      Paper paper,
      PdfPTable table,
      ChartSnapshot chart,
      List<List<ChartPoint>> all) {
    for (List<ChartPoint> stretch : stretches(chart)) {
      all.add(stretch);
      if (all.size() <= MOST_ROWS) {
        row(report, paper, table, chart, stretch);
      }
    }
  }

  private static void row(
      JobReport report,
      Paper paper,
      PdfPTable table,
      ChartSnapshot chart,
      List<ChartPoint> stretch) {
    ChartPoint first = stretch.get(0);
    ChartPoint last = stretch.get(stretch.size() - 1);
    paper.row(
        table,
        PictureKind.of(chart.kind()).title(),
        range(first.number(), last.number()),
        Print.time(first.atMicros(), report.zone()),
        Print.time(last.atMicros(), report.zone()),
        range(first.piece(), last.piece()),
        broken(stretch));
  }

  /** Points with a signal that follow one another on the chart. */
  static List<List<ChartPoint>> stretches(ChartSnapshot chart) {
    List<List<ChartPoint>> stretches = new ArrayList<>();
    boolean running = false;
    for (ChartPoint point : chart.points()) {
      boolean signals = point.signalling();
      if (signals && !running) {
        stretches.add(new ArrayList<>());
      }
      if (signals) {
        stretches.get(stretches.size() - 1).add(point);
      }
      running = signals;
    }
    return stretches;
  }

  private static String range(long first, long last) {
    return first == last ? String.valueOf(first) : first + " to " + last;
  }

  /** Each rule once, told by the longest run that broke it. */
  private static String broken(List<ChartPoint> stretch) {
    return stretch.stream()
        .flatMap(point -> point.signals().stream())
        .sorted(Comparator.comparingInt(Signal::test))
        .map(SignalWords::of)
        .distinct()
        .collect(Collectors.joining("; "));
  }
}
