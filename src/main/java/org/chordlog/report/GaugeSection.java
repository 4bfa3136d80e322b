package org.chordlog.report;

import com.lowagie.text.pdf.PdfPTable;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Indicator;
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
            () ->
                paper.text(
                    report.readings().isEmpty()
                        ? "No reading has been taken yet."
                        : "All readings are excluded."));
  }

  private static List<Paper.Fact> facts(SetUp setUp, JobReport report) {
    PrintedLengths lengths = report.lengths();
    Bridge bridge = setUp.bridge();
    Indicator indicator = setUp.indicator();
    List<Paper.Fact> facts = new ArrayList<>();
    facts.add(new Paper.Fact("Bridge", bridge.name()));
    facts.add(
        new Paper.Fact(
            "Span, nominal",
            "%s, u %s"
                .formatted(
                    lengths.plain(bridge.spanMm()), lengths.plain(bridge.spanUncertaintyMm()))));
    facts.add(new Paper.Fact("Foot radius", lengths.plain(bridge.footRadiusMm())));
    facts.add(new Paper.Fact("Feet", feet(bridge)));
    facts.add(new Paper.Fact("Skew, at most", "± " + Print.plain(bridge.skewLimitDegrees()) + "°"));
    facts.add(
        new Paper.Fact(
            "Indicator",
            "step %s, ± %s"
                .formatted(
                    lengths.plain(indicator.resolutionMm()),
                    lengths.plain(indicator.permissibleErrorMm()))));
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
        : "%s, %s"
            .formatted(
                report.lengths().withUnit(report.lengths().depth(zero.valueNm())),
                Print.time(zero.takenAtMicros(), report.zone()));
  }

  private static void calibration(
      @Nullable Calibration calibration, JobReport report, List<Paper.Fact> facts) {
    PrintedLengths lengths = report.lengths();
    if (calibration == null) {
      facts.add(new Paper.Fact("Calibration", "none: nominal span used"));
      return;
    }
    facts.add(
        new Paper.Fact("Calibration", Print.time(calibration.takenAtMicros(), report.zone())));
    facts.add(
        new Paper.Fact("Calibration due", Print.time(calibration.dueAtMicros(), report.zone())));
    facts.add(
        new Paper.Fact("Span, calibrated", lengths.withUnit(lengths.figure(calibration.spanMm()))));
    facts.add(
        new Paper.Fact(
            "Zero offset, calibrated",
            lengths.withUnit(lengths.figure(calibration.zeroOffsetMm()))));
  }

  private static void budget(JobReport report, Paper paper) {
    PrintedLengths lengths = report.lengths();
    if (report.gauge().uncertainty().isEmpty()) {
      return;
    }
    PdfPTable table =
        paper.table(
            Column.words("Uncertainty of the newest reading", 3),
            Column.words("value", 3.4),
            Column.words("distribution", 1.4),
            Column.number("u", 1.8),
            Column.number(lengths.heading("in radius"), 1.4));
    for (UncertaintyLine line : report.gauge().uncertainty()) {
      paper.row(table, line.source(), lengths.said(line.value()), line.distribution());
      paper.right(table, uncertainty(line, lengths));
      paper.right(table, lengths.fixed(line.contributionMm(), 3));
    }
    table.setSpacingBefore(6);
    paper.add(table);
  }

  private static String uncertainty(UncertaintyLine line, PrintedLengths lengths) {
    double value = lengths.value(line.standardUncertainty(), line.unit());
    return Print.figure(value) + " " + lengths.shown(line.unit());
  }
}
