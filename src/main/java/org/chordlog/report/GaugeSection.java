package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.verdict.Words;
import org.jspecify.annotations.Nullable;

/** What was measured with: bridge, indicator, zero, calibration, uncertainty. */
final class GaugeSection {
  private GaugeSection() {}

  static void write(JobReport report, Paper paper) {
    paper.heading("Gauge");
    report
        .newestSetUp()
        .ifPresentOrElse(
            setUp -> {
              paper.facts(facts(setUp, report), 4);
              GaugeHistory.write(report, paper);
              budget(report, paper);
            },
            () -> paper.text("No reading has been taken yet."));
  }

  private static List<Paper.Fact> facts(SetUp setUp, JobReport report) {
    Bridge bridge = setUp.bridge();
    Indicator indicator = setUp.indicator();
    List<Paper.Fact> facts = new ArrayList<>();
    facts.add(new Paper.Fact("Bridge", bridge.name()));
    facts.add(
        new Paper.Fact(
            "Span, nominal",
            "%s mm, u %s mm"
                .formatted(Print.plain(bridge.spanMm()), Print.plain(bridge.spanUncertaintyMm()))));
    facts.add(new Paper.Fact("Foot radius", Print.plain(bridge.footRadiusMm()) + " mm"));
    facts.add(new Paper.Fact("Feet", feet(bridge)));
    facts.add(new Paper.Fact("Skew, at most", "± " + Print.plain(bridge.skewLimitDegrees()) + "°"));
    facts.add(
        new Paper.Fact(
            "Indicator",
            "step %s mm, ± %s mm"
                .formatted(
                    Print.plain(indicator.resolutionMm()),
                    Print.plain(indicator.permissibleErrorMm()))));
    facts.add(new Paper.Fact("Zero", zero(setUp.zero(), report)));
    calibration(setUp.calibration(), report, facts);
    return facts;
  }

  private static String feet(Bridge bridge) {
    return bridge.footKind() == null
        ? "kind not stated, taken as points"
        : Words.of(bridge.footKind());
  }

  static String zero(@Nullable Zero zero, JobReport report) {
    return zero == null
        ? "none taken"
        : "%s mm, %s"
            .formatted(
                Print.number(Length.mm(zero.valueNm()), 4),
                Print.time(zero.takenAtMicros(), report.zone()));
  }

  private static void calibration(
      @Nullable Calibration calibration, JobReport report, List<Paper.Fact> facts) {
    if (calibration == null) {
      facts.add(new Paper.Fact("Calibration", "none: nominal span used"));
      return;
    }
    facts.add(
        new Paper.Fact("Calibration", Print.time(calibration.takenAtMicros(), report.zone())));
    facts.add(
        new Paper.Fact("Calibration due", Print.time(calibration.dueAtMicros(), report.zone())));
    facts.add(new Paper.Fact("Span, calibrated", Print.figure(calibration.spanMm()) + " mm"));
    facts.add(
        new Paper.Fact(
            "Zero offset, calibrated", Print.figure(calibration.zeroOffsetMm()) + " mm"));
  }

  private static void budget(JobReport report, Paper paper) {
    if (report.gauge().uncertainty().isEmpty()) {
      return;
    }
    PdfPTable table =
        paper.table(
            Column.words("Uncertainty of the newest reading", 3),
            Column.words("value", 3.4),
            Column.words("distribution", 1.4),
            Column.number("u", 1.8),
            Column.number("in radius, mm", 1.4));
    for (UncertaintyLine line : report.gauge().uncertainty()) {
      paper.row(table, line.source(), line.value(), line.distribution());
      paper.right(table, Print.figure(line.standardUncertainty()) + " " + line.unit());
      paper.right(table, Print.number(line.contributionMm(), 3));
    }
    table.setSpacingBefore(6);
    paper.add(table);
  }
}
