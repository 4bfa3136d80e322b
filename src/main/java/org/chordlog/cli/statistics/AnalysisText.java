package org.chordlog.cli.statistics;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Lengths;
import org.chordlog.stats.PositionEffect;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Signal;
import org.chordlog.verdict.CapabilityVerdict;
import org.chordlog.verdict.Counted;
import org.chordlog.verdict.SignalWords;
import org.jspecify.annotations.Nullable;

/** An analysis for people. */
final class AnalysisText {
  private static final int SIGNALS = 20;

  private static final int DECIMALS = 3;

  /** In the unit of the column. */
  private static final Set<FigureKind> IN_UNIT =
      EnumSet.of(
          FigureKind.MEAN,
          FigureKind.MINIMUM,
          FigureKind.MAXIMUM,
          FigureKind.RANGE,
          FigureKind.OVERALL,
          FigureKind.WITHIN,
          FigureKind.LOW,
          FigureKind.MIDDLE,
          FigureKind.HIGH,
          FigureKind.GAUGE,
          FigureKind.GAUGE_BIAS);

  private final StringBuilder text = new StringBuilder();
  private final @Nullable Lengths lengths;

  AnalysisText(Analysis analysis, @Nullable Lengths lengths) {
    this.lengths = lengths;
    boolean several = analysis.parts().size() > 1;
    for (Analysis.Part part : analysis.parts()) {
      String name = several ? ", " + part.summary().characteristic() : "";
      line(
          "%s%s: %s%s",
          analysis.column(),
          name,
          Counted.of(part.summary().count(), "reading"),
          analysis.phases().scope());
      line("");
      row("Figure", "Value", "95 % interval", "How it was computed");
      part.summary().figures().forEach(this::figure);
      part.charts().forEach(this::chart);
      line("");
      ControlText.lines(part.control()).forEach(each -> line("%s", each));
      part.summary().cautions().forEach(caution -> line("Caution: %s", caution.text()));
      line("");
    }
    line("%s", analysis.settings());
    analysis.positionEffects().forEach(this::effect);
    analysis.lots().forEach(this::lot);
    Double base = analysis.trendBase();
    String relative = base == null ? "its nominal" : unpadded(base);
    line("Trend, relative to %s: %s", relative, analysis.trend().text());
    phases(analysis.phases());
    leftOut("without a number", analysis.leftOut().withoutNumber());
    leftOut("excluded_reason says why", analysis.leftOut().excluded());
    leftOut("a summary of other rows", analysis.leftOut().summaries());
    leftOut("equal to a row above in every cell", analysis.leftOut().again());
    if (!analysis.leftOut().summaries().isEmpty() || !analysis.leftOut().again().isEmpty()) {
      line("They count with --all-rows.");
    }
    leftOut("the heading again", analysis.leftOut().headings());
    analysis.notes().forEach(each -> line("%s", each));
  }

  private void phases(Analysis.Phases phases) {
    if (phases.several() && phases.chosen() == null) {
      line(
          "No range is counted across the beginning of a phase, and each has control limits of its"
              + " own; above are those of the last one.");
      line("The newest phase alone, which a job's page shows first: --phase newest");
    }
  }

  private void leftOut(String why, List<Long> lines) {
    if (!lines.isEmpty()) {
      String which = lines.size() == 1 ? "Line" : "Lines";
      line("%s left out, %s: %s", which, why, shortened(lines));
    }
  }

  private void lot(Analysis.Lot lot) {
    Figure index = new CapabilityVerdict(lot.summary(), true).index().orElse(null);
    line(
        "Lot %s: %s, mean %s, s %s%s",
        lot.lot().isEmpty() ? "(none)" : lot.lot(),
        Counted.of(lot.summary().count(), "reading"),
        value(lot, FigureKind.MEAN),
        value(lot, FigureKind.OVERALL),
        index == null
            ? ""
            : ", %s %s %s"
                .formatted(index.kind().title(), number(index, index.value()), interval(index)));
  }

  private String value(Analysis.Lot lot, FigureKind kind) {
    return lot.summary().figure(kind).map(each -> number(each, each.value())).orElse("–");
  }

  private void effect(PositionEffect effect) {
    line(
        "Position %s is %s (%s to %s, 95 %%) from the mean of its piece",
        effect.position(),
        number(effect.meanDifference()),
        number(effect.lower()),
        number(effect.upper()));
  }

  private void figure(Figure figure) {
    row(title(figure), number(figure, figure.value()), interval(figure), figure.method());
  }

  private String title(Figure figure) {
    String title = figure.kind().title();
    return figure.unit().isEmpty() ? title : title + ", " + figure.unit();
  }

  private void row(String title, String value, String interval, String method) {
    line("%-32s %10s  %-20s %s", title, value, interval, method);
  }

  private String interval(Figure figure) {
    return figure.confidence() == null
        ? ""
        : number(figure, figure.lower()) + " to " + number(figure, figure.upper());
  }

  private void chart(ChartSnapshot chart) {
    line("");
    line("%s, %s", PictureKind.of(chart.kind()).title(), points(chart.pointCount(), ""));
    if (!chart.limits().isEmpty()) {
      LimitSpan newest = chart.limits().get(chart.limits().size() - 1);
      line(
          "  lower %s  centre %s  upper %s%s",
          number(newest.lower()),
          number(newest.centre()),
          number(newest.upper()),
          newest.frozen() ? "  (frozen)" : "");
    }
    List<ChartPoint> signals = Analysis.signals(chart);
    signals.stream().limit(SIGNALS).forEach(this::signal);
    if (signals.size() > SIGNALS) {
      line("  and %s", points(signals.size() - SIGNALS, "more "));
    }
  }

  private static String points(long count, String which) {
    return count + " " + which + (count == 1 ? "point" : "points");
  }

  private void signal(ChartPoint point) {
    String broken =
        point.signals().stream().map(AnalysisText::words).collect(Collectors.joining("; "));
    line("  point %d (%s): %s", point.number(), number(value(point)), broken);
  }

  /** Of a CUSUM the sum on the side that signals. */
  private static double value(ChartPoint point) {
    Double lower = point.lowerValue();
    boolean below = point.signals().stream().anyMatch(each -> each.side() == Signal.Side.BELOW);
    return lower != null && below ? lower : point.value();
  }

  private static String words(Signal signal) {
    return SignalWords.of(signal) + " (test " + signal.test() + span(signal.points()) + ")";
  }

  private static String span(List<Long> points) {
    return points.size() == 1
        ? ""
        : ", points " + points.get(0) + " to " + points.get(points.size() - 1);
  }

  private static String shortened(List<Long> rows) {
    String first =
        rows.stream().limit(SIGNALS).map(String::valueOf).collect(Collectors.joining(", "));
    return rows.size() > SIGNALS ? first + " … (" + rows.size() + ")" : first;
  }

  /** With the digits that pages and reports give it; a length of unknown unit as it is. */
  private String number(Figure figure, @Nullable Double value) {
    boolean unknown = lengths == null && IN_UNIT.contains(figure.kind());
    return value == null || unknown ? number(value) : figure.printed(value);
  }

  /** Three decimals of a millimetre, or without a unit seven significant digits at most. */
  private String number(@Nullable Double value) {
    if (value == null) {
      return "–";
    }
    return lengths == null ? unpadded(value) : Decimals.fixed(value, lengths.decimalsAs(DECIMALS));
  }

  /** What was stated keeps its digits. */
  private String unpadded(double value) {
    return Decimals.plain(new BigDecimal(value).round(new MathContext(7)));
  }

  private void line(String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values)).append(System.lineSeparator());
  }

  @Override
  public String toString() {
    return text.toString().stripTrailing();
  }
}
